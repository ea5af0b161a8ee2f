namespace Logbook.Demo.Line;

/// <summary>Every lever, wandering slowly about its usual value, and moved by the changes that were planned.</summary>
internal sealed class Levers
{
    private readonly Dictionary<Lever, Drift> _drifts;
    private readonly ILookup<Lever, PlantChange> _changes;
    private DateTimeOffset _now;

    public Levers(IEnumerable<PlantChange> changes, Chance chance)
    {
        _changes = changes.ToLookup(c => c.Lever);
        _drifts = Enum.GetValues<Lever>().ToDictionary(l => l, l => Usual(l, chance));
    }

    public double this[Lever lever]
    {
        get
        {
            var value = _drifts[lever].Value;
            foreach (var change in _changes[lever])
            {
                value += change.From <= _now && _now < change.To ? change.By : 0;
            }

            return value;
        }
    }

    /// <summary>Hours since the last planned change of the lever ended.</summary>
    public double HoursSinceChange(Lever lever) =>
        (_now - _changes[lever].Where(c => c.To <= _now).Select(c => c.To).DefaultIfEmpty(_now).Max()).TotalHours;

    public void Step(DateTimeOffset now, double dtHours)
    {
        _now = now;
        foreach (var drift in _drifts.Values)
        {
            drift.Step(dtHours);
        }
    }

    // Usual values of an invented line; spreads and memories are common practice, no source.
    private static Drift Usual(Lever lever, Chance chance) => lever switch
    {
        Lever.Strength => new(119.5, 1.2, 16, chance),
        Lever.Sulphidity => new(0.25, 0.004, 48, chance),
        Lever.GreenCausticity => new(0.15, 0.005, 24, chance),
        Lever.Flow => new(300, 3, 10, chance),
        Lever.RawTemperature => new(93, 0.4, 12, chance),
        Lever.CoolerOutlet => new(88.2, 0.10, 8, chance),
        Lever.Availability => new(0.88, 0.005, 36, chance),
        Lever.LimeTemperature => new(60, 2, 24, chance),
        Lever.LimeFactor => new(1, 0.008, 12, chance),
        Lever.GritsShare => new(0.01, 0.0008, 24, chance),
        Lever.Evaporation => new(SlakerFeed.UsualEvaporation, 0.25, 12, chance),
        Lever.FilterRunning => new(1, 0, 1, chance),
        Lever.RawDregs => new(950, 70, 24, chance),
        Lever.FiltrateDregs => new(12, 1.2, 24, chance),
        Lever.DigesterDraw => new(0, 8, 12, chance),
        Lever.DissolvingDraw => new(0, 4, 12, chance),
        Lever.KilnLime => new(0, 0.4, 24, chance),
        Lever.ReslurryWater => new(66, 1.5, 12, chance),
        Lever.CakeSolids => new(0.66, 0.006, 24, chance),
        Lever.KilnFeedSolids => new(0.78, 0.006, 24, chance),
        Lever.WeakWashTemperature => new(70, 0.6, 24, chance),
        Lever.WhiteLiquorTemperature => new(93, 0.4, 12, chance),
        _ => throw new ArgumentOutOfRangeException(nameof(lever), lever, "a lever without a usual value"),
    };
}
