using CanopySim.Carbon;
using CanopySim.Fruit;
using CanopySim.Geometry;
using CanopySim.Growth;
using CanopySim.Light;
using CanopySim.Phenology;
using CanopySim.Photosynthesis;
using CanopySim.Plants;
using CanopySim.Recording;
using CanopySim.Results;
using CanopySim.Sky;
using CanopySim.Training;
using CanopySim.Water;
using CanopySim.Weather;

namespace CanopySim;

/// <summary>
/// A season: owns the parts and gives each stage of the day one method; <see cref="DayCycle"/> calls them in order.
/// </summary>
public sealed class Simulation
{
    // Weeks before bloom whose supply decides set.
    private const int DaysThatDecideSet = 20;

    private readonly Scenario _scenario;
    private readonly SeasonOptions _options;
    private readonly SeasonCalendar _calendar;
    private readonly WeatherSeries _weather;

    private readonly Stages _stages;
    private readonly SoilWater _soil;
    private readonly ShootDevelopment _development;
    private readonly LeafSenescence _senescence;
    private readonly CanopyWorker _worker;
    private readonly CanopyLight _light;
    private readonly CanopyGasExchange _gasExchange;
    private readonly VineDayCycle _carbon;
    private readonly BerryGrowth _berries;
    private readonly SeasonRecord _record;
    private readonly SeasonClock _clock;
    private readonly DayRecorder? _recorder;

    private readonly LostMass[] _lost;
    private readonly double[] _stock;
    private readonly Queue<double> _recentSupply = new();
    private DateOnly? _secondaryBreak;
    private double _fruitfulness = 1;
    private double _progressBefore;
    private bool _canopyChanged = true;
    private bool _setDone;
    private PlacedCanopy? _placed;
    private LightOfDay? _lightOfDay;
    private HourlySun[]? _suns;
    private IReadOnlyList<LeafDay> _leafDays = [];
    private VineDay[] _vineDays = [];
    private double _transpiration;

    private Simulation(Scenario scenario, WeatherSeries weather, double utcOffsetHours, SeasonOptions options)
    {
        (_scenario, _weather, _options) = (scenario, weather, options);
        _calendar = SeasonCalendar.Of(scenario, weather);
        Canopy = VinePlanting.Plant(scenario);
        _stages = new Stages(scenario.Cultivar, scenario.Growth, scenario.Season.Budbreak);
        _soil = new SoilWater(scenario.Soil);
        _development = new ShootDevelopment(scenario.Growth, Canopy);
        _senescence = new LeafSenescence(scenario.Growth, scenario.Carbon, scenario.LeafAge);
        _worker = new CanopyWorker(scenario, _soil);
        _light = new CanopyLight(scenario, options.Quality, utcOffsetHours, options.Threads);
        _gasExchange = new CanopyGasExchange(scenario, options.Threads, isRough: options.Quality == Quality.Rough);
        _carbon = new VineDayCycle(scenario);
        _berries = new BerryGrowth(scenario.Fruit);
        _clock = new SeasonClock(options.Seconds);
        _record = new SeasonRecord(scenario, options);
        _recorder = options.Recorder is { } hand ? new DayRecorder(scenario, hand) : null;
        _lost = new LostMass[Canopy.Vines.Count];
        _stock = [.. Canopy.Vines.Select(vine => CarbonStock.Of(vine, scenario.Carbon))];
    }

    /// <summary>The vines of the cell as they stand.</summary>
    public Canopy Canopy { get; }

    /// <summary>Runs a season to its end.</summary>
    /// <param name="scenario">The block.</param>
    /// <param name="weather">Complete weather.</param>
    /// <param name="utcOffsetHours">Local standard time less UTC [h].</param>
    /// <param name="options">How it is run.</param>
    /// <exception cref="SeasonInputException">Scenario and weather do not fit together.</exception>
    /// <exception cref="OperationCanceledException">The season was stopped.</exception>
    public static SeasonResult Run(Scenario scenario, WeatherSeries weather, double utcOffsetHours, SeasonOptions options)
    {
        var season = new Simulation(scenario, weather, utcOffsetHours, options);
        return season.RunToEnd();
    }

    /// <summary>The canopy of a season as it stands on the evening of a day.</summary>
    /// <exception cref="SeasonInputException">Scenario and weather do not fit together.</exception>
    public static Canopy CanopyOn(Scenario scenario, WeatherSeries weather, double utcOffsetHours, SeasonOptions options, DateOnly date)
    {
        var season = new Simulation(scenario, weather, utcOffsetHours, options with { Until = date });
        season.RunToEnd();
        return season.Canopy;
    }

    private SeasonResult RunToEnd()
    {
        var end = "weather_ends";
        var last = _calendar.HeatFrom;
        foreach (var day in _weather.Days)
        {
            if (day.Date < _calendar.HeatFrom) continue;
            _options.Cancellation.ThrowIfCancellationRequested();
            DayCycle.Run(this, day);
            last = day.Date;
            _options.Progress?.Invoke(day.Date, ShareDone(day.Date));
            if (SeasonEnd.Reason(_scenario, _stages, _record, day, _options.Until, _calendar) is not { } reason) continue;
            end = reason;
            break;
        }

        _worker.Close(StagesReached.Of(_stages), _calendar.HeatFrom, last, isCutShort: end == "until");
        return _record.Finish(new SeasonFacts
        {
            Work = _worker,
            Weather = _weather,
            Calendar = _calendar,
            Stages = _stages,
            Canopy = Canopy,
            EndReason = end,
            LastDay = last,
            SkyDirections = _light.SkyDirectionCount,
            Seconds = _clock.Times(),
        });
    }

    internal void AddThermalTime(WeatherDay weather)
    {
        var hadBudbreak = _stages.Budbreak is not null;
        _progressBefore = _stages.VeraisonProgress;
        _stages.Advance(weather, Canopy.Vines.Average(vine => vine.Carbon.SupplyIndex));
        if (!hadBudbreak && _stages.Budbreak is not null) BreakBuds();
    }

    internal void SufferFrost(WeatherDay weather)
    {
        if (_secondaryBreak is { } secondaryBreak)
        {
            // No shoot, no way to bloom: it begins when the secondary buds break.
            _stages.RestartBloom();
            if (secondaryBreak <= weather.Date) BreakBuds();
        }

        if (_stages.Budbreak is null || _stages.Bloom is not null) return;
        if (weather.MinimumTemperatureCelsius > _scenario.Growth.SpringFrostKill || !Canopy.PrimaryShoots().Any()) return;
        foreach (var vine in Canopy.Vines) _lost[vine.Id.Value] += FrostDamage.Kill(vine, _scenario.Carbon);
        _secondaryBreak = weather.Date.AddDays((int)Math.Round(_scenario.Growth.SecondaryBudDelay));
        _fruitfulness *= _scenario.Growth.SecondaryBudFruitfulness;
        _stages.RestartBloom();
        _canopyChanged = true;
        _record.NoteSpringFrost(weather.Date);
    }

    internal void WorkInCanopy(DateOnly date)
    {
        var (cut, changed) = _worker.Apply(Canopy, StagesReached.Of(_stages), date);
        _canopyChanged |= changed;
        for (var i = 0; i < cut.Count; i++) _lost[i] += cut[i];
    }

    internal void GrowShoots(WeatherDay weather)
    {
        var conditions = Conditions(weather);
        foreach (var vine in Canopy.Vines)
        {
            _development.Advance(vine, conditions);
            if (_stages.Bloom is null) ClusterPlacement.Place(vine, _scenario.Fruit.ClustersPerShoot * _fruitfulness, _scenario.Seed);
        }

        SetBerries();
    }

    internal void AgeLeaves()
    {
        foreach (var vine in Canopy.Vines) _lost[vine.Id.Value] += new LostMass(_senescence.Advance(vine), 0, 0, 0);
    }

    internal void PlaceBlades()
    {
        if (!Canopy.PrimaryShoots().Any()) return;
        _clock.LightGeometry(() => _placed = _light.Place(Canopy, _canopyChanged));
        _record.NoteScene(_placed!);
        _recorder?.NotePlaced(_placed!, Canopy);
        _canopyChanged = false;
    }

    internal void ShineOnBlades(WeatherDay weather)
    {
        (_lightOfDay, _suns) = (null, null);
        if (!Canopy.PrimaryShoots().Any()) return;
        _clock.Light(() =>
        {
            _suns = _light.Suns(weather);
            _lightOfDay = _light.Solve(weather, _suns);
        });
        LeafLightMemory.Remember(_lightOfDay!, _scenario.Optics);
    }

    internal void Assimilate(WeatherDay weather)
    {
        _leafDays = [];
        _transpiration = 0;
        if (_lightOfDay is null) return;
        var supply = Canopy.Vines.Select(vine => vine.Carbon.SupplyIndex).ToArray();
        _clock.GasExchange(() => _leafDays = _gasExchange.Day(_lightOfDay, weather, WaterStress.Stomata(_soil.Fraction), supply, _recorder?.Hours));
        foreach (var leaf in _leafDays) _transpiration += leaf.TranspirationLiters;
    }

    internal void PayAndShareCarbon(WeatherDay weather)
    {
        // The vine's account opens at budbreak, for which its reserves are given.
        _vineDays = [];
        if (_stages.Budbreak is null) return;
        var net = new double[Canopy.Vines.Count];
        foreach (var leaf in _leafDays)
            net[leaf.Leaf.Shoot.Vine.Value] += leaf.NetAssimilationGrams * Numerics.UnitConversion.GramsCarbohydratePerGramCo2;
        var conditions = Conditions(weather);
        var daysSinceVeraison = _stages.Veraison is { } veraison ? weather.Date.DayNumber - veraison.DayNumber : (int?)null;
        _vineDays = new VineDay[Canopy.Vines.Count];
        foreach (var vine in Canopy.Vines)
        {
            var i = vine.Id.Value;
            var demand = _carbon.FruitDemand(vine, _progressBefore, _stages.VeraisonProgress, daysSinceVeraison, weather);
            _vineDays[i] = _carbon.Settle(vine, weather, conditions, demand, CarbonSeason(), Warmth(conditions), net[i], _lost[i], _stock[i]);
            _stock[i] = _vineDays[i].Ledger.StockAfter;
            _lost[i] = default;
        }
    }

    internal void DrawWater(WeatherDay weather) =>
        _soil.CloseDay(weather.Rain, _transpiration / CanopyScene.CellOf(_scenario).GroundArea);

    internal void CloseDay(WeatherDay weather)
    {
        RememberSupply();
        var brix = Canopy.Vines.Average(vine => _berries.Brix(vine.Crop));
        if (_stages.Veraison is not null && _stages.Ripe is null && brix >= _scenario.Season.TargetSugar) _stages.Ripe = weather.Date;
        if (weather.Date < _calendar.RowsFrom && _stages.Budbreak is null) return;
        _record.Add(new DayFacts
        {
            Weather = weather,
            Stages = _stages,
            Canopy = Canopy,
            Light = _lightOfDay,
            IncidentParMoles = IncidentPar.MolesPerDay(weather, _suns ?? _light.Suns(weather)),
            Leaves = _leafDays,
            Vines = _vineDays,
            TranspirationLiters = _transpiration,
            SoilWaterFraction = _soil.Fraction,
        });
        _recorder?.Add(_record.LastDay, weather, _lightOfDay, _leafDays);
    }

    private GrowthConditions Conditions(WeatherDay weather) => new(
        weather.Date,
        _stages.Budbreak is null ? 0 : _stages.ThermalUnits(weather),
        _stages.ThermalTimeSinceBloom,
        WaterStress.Nodes(_soil.Fraction),
        WaterStress.Expansion(_soil.Fraction),
        WaterStress.Laterals(_soil.Fraction));

    private double Warmth(GrowthConditions conditions) =>
        conditions.ThermalUnits / (_scenario.Growth.OptimumTemperature - _scenario.Growth.BaseTemperature);

    private CarbonSeason CarbonSeason() =>
        _stages.Veraison is not null ? Carbon.CarbonSeason.Ripening
        : _stages.Bloom is not null ? Carbon.CarbonSeason.FruitGrowth
        : Carbon.CarbonSeason.Spring;

    private void BreakBuds()
    {
        _secondaryBreak = null;
        foreach (var vine in Canopy.Vines)
            foreach (var shoot in VinePlanting.BreakBuds(Canopy, vine, _scenario))
            {
                if (_scenario.CanopyWork.ShootsLed != ShootLeading.AsTheyGrow) shoot.HeldNodes = 0;
                _development.Break(shoot);
            }

        _canopyChanged = true;
    }

    private void SetBerries()
    {
        if (_setDone || _stages.Bloom is null) return;
        _setDone = true;
        var supply = _recentSupply.Count > 0 ? _recentSupply.Average() : 1;
        foreach (var vine in Canopy.Vines) _berries.SetBerries(vine, supply);
    }

    private void RememberSupply()
    {
        _recentSupply.Enqueue(Canopy.Vines.Average(vine => vine.Carbon.SupplyIndex));
        if (_recentSupply.Count > DaysThatDecideSet) _recentSupply.Dequeue();
    }

    private double ShareDone(DateOnly date) =>
        Math.Clamp((date.DayNumber - _calendar.HeatFrom.DayNumber) / (double)(_calendar.LastDay.DayNumber - _calendar.HeatFrom.DayNumber), 0, 1);
}
