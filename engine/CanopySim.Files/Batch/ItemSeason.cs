using CanopySim.Files.Scenarios;

namespace CanopySim.Files.Batch;

/// <summary>What growing an item left: its rows, or why it failed.</summary>
/// <param name="Item">Number of the item.</param>
/// <param name="Season">Row of the table of seasons; null where it failed.</param>
/// <param name="Courses">Rows of the table of courses.</param>
/// <param name="Failure">What went wrong, in a line; null where nothing did.</param>
public sealed record ItemRows(int Item, object?[]? Season, IReadOnlyList<object?[]> Courses, string? Failure);

/// <summary>Grows the seasons of a plan one by one, each on one thread. Safe for many threads.</summary>
public sealed class ItemSeason
{
    private readonly BatchPlan _plan;
    private readonly PlanItems _items;
    private readonly BatchWeather _weather;

    /// <param name="plan">The plan.</param>
    /// <param name="items">Its list.</param>
    /// <param name="threads">How many grow at once: so many seasons of weather are kept at least.</param>
    public ItemSeason(BatchPlan plan, PlanItems items, int threads)
    {
        (_plan, _items) = (plan, items);
        _weather = new BatchWeather(plan, Math.Max(8, threads + 2));
        Seasons = new SeasonsTable(plan);
    }

    public SeasonsTable Seasons { get; }

    /// <summary>Grows an item. What is wrong with it is its own: the others go on.</summary>
    /// <exception cref="OperationCanceledException">Stopped in the middle.</exception>
    /// <exception cref="IOException">A weather file cannot be read any more: nothing that lies with the item.</exception>
    public ItemRows Grow(int number, CancellationToken stop)
    {
        try
        {
            var item = _items.Item(number);
            var document = DocumentOf(item);
            var weather = _weather.Of(item, document);
            var scenario = document.Scenario;
            var calendar = SeasonCalendar.Of(scenario, weather.Series);
            var result = Simulation.Run(scenario, weather.Series, weather.UtcOffsetHours, new SeasonOptions
            {
                Quality = _plan.Quality,
                Threads = 1,
                Until = _plan.UntilOf(calendar),
                Cancellation = stop,
            });
            return new ItemRows(
                number, Seasons.Row(item, document, calendar, result.Summary),
                CoursesTable.Rows(number, result, calendar), Failure: null);
        }
        catch (SeasonInputException error)
        {
            return Failed(number, $"{error.Key}: {error.Message}");
        }
        catch (InputError error)
        {
            return Failed(number, error.Message);
        }
        catch (Exception error) when (error is not (OperationCanceledException or IOException or UnauthorizedAccessException or OutOfMemoryException))
        {
            // One season in thousands may find what nobody has seen before; it must not take the others with it.
            return Failed(number, $"this should not have happened: {error.GetType().Name}: {error.Message}");
        }
    }

    private ScenarioDocument DocumentOf(PlanItem item)
    {
        var document = _plan.Scenarios[item.Scenario].Template.Document(_items.Changes(item));
        return _plan.Weather[item.Weather].File is { } file
            ? document with { Scenario = document.Scenario with { Weather = document.Scenario.Weather with { File = file } }, WeatherPath = file }
            : document;
    }

    private static ItemRows Failed(int number, string message) => new(number, null, [], message.ReplaceLineEndings(" "));
}
