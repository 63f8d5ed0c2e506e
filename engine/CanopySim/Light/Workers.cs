using System.Runtime.ExceptionServices;

namespace CanopySim.Light;

/// <summary>Runs numbered items on a few threads. Items write to places of their own, so who runs which is of no account.</summary>
internal static class Workers
{
    public static void Run<TScratch>(int threads, int items, Func<TScratch> scratch, Action<TScratch, int> item)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(threads, 1);
        var next = -1;
        var workers = Math.Min(threads, items);
        if (workers > 1)
            Together();
        else if (workers == 1)
            Work();

        // One fault has its own message; that workers had several at once says nothing more.
        void Together()
        {
            try
            {
                Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers }, _ => Work());
            }
            catch (AggregateException many)
            {
                ExceptionDispatchInfo.Throw(many.InnerExceptions[0]);
            }
        }

        void Work()
        {
            var own = scratch();
            for (var index = Interlocked.Increment(ref next); index < items; index = Interlocked.Increment(ref next)) item(own, index);
        }
    }
}
