namespace CanopySim.Sampling;

/// <summary>
/// A design's outputs by rows that belong together. An estimator needs all of a row: where one output is missing or not a finite
/// number, the row is dropped whole, and counted.
/// </summary>
internal sealed record CompleteRows(double[][] Rows, int Dropped)
{
    /// <exception cref="ArgumentException">The outputs are not those of whole rows.</exception>
    public static CompleteRows Of(IReadOnlyList<double?> outputs, int rowLength)
    {
        if (outputs.Count % rowLength != 0)
            throw new ArgumentException($"{outputs.Count} outputs; expected a multiple of {rowLength}, one for every point of the design", nameof(outputs));
        var all = outputs.Chunk(rowLength).ToList();
        double[][] complete =
        [
            .. all.Where(row => row.All(output => output is { } value && double.IsFinite(value)))
                .Select(row => row.Select(output => output!.Value).ToArray()),
        ];
        return new CompleteRows(complete, all.Count - complete.Length);
    }
}
