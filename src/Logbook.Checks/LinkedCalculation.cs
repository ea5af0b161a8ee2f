using Logbook.Contracts;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A binding of the site together with the plug-in's calculation, every name and unit resolved.</summary>
internal sealed record LinkedCalculation(
    CalculationBinding Binding, LoadedCalculation Loaded, IReadOnlyList<LinkedInput> Inputs, IReadOnlyList<LinkedOutput> Outputs)
{
    public string Name => Binding.Name;

    public CalculationInfo Info => Loaded.Calculation.Info;

    public string Title => $"{Info.Title} ({Name})";

    /// <summary>The points that are read as they stand now; a lagged input is history and ties nothing to this entry.</summary>
    public IReadOnlyList<Point> CurrentPoints { get; } = [.. Inputs.Where(i => i.Point is not null && i.Lag == TimeSpan.Zero).Select(i => i.Point!)];

    /// <summary>The points with which it is run: the current ones; where all are lagged, any of them.</summary>
    public IReadOnlyList<Point> Triggers => CurrentPoints.Count > 0 ? CurrentPoints : AllPoints;

    /// <summary>Every point is taken as it was so long ago: it works out the past once more, beside what is titrated now.</summary>
    public bool LooksBack => CurrentPoints.Count == 0 && AllPoints.Count > 0;

    /// <summary>It gives a point that is judged whatever runs: its silence must be seen.</summary>
    public bool IsSafety => Outputs.Any(o => o.Point?.Always == true);

    private IReadOnlyList<Point> AllPoints { get; } = [.. Inputs.Where(i => i.Point is not null).Select(i => i.Point!)];

    /// <summary>A binding that names derived points keeps what lands in them and what is a witness; one that names none keeps everything.</summary>
    public bool Keeps(LinkedOutput output) => output.Point is not null || output.Estimates is not null || Outputs.All(o => o.Point is null);
}

/// <summary>One role and where its number comes from: a point, or else a constant.</summary>
/// <param name="Key">Names the source: the tag, the tag with its lag, or the binding's own constant. One key moves as one.</param>
/// <param name="Unit">The role's unit.</param>
internal sealed record LinkedInput(InputInfo Info, Unit Unit, string Key, Point? Point, Quantity? Constant, TimeSpan Lag)
{
    /// <summary>From the source's own unit to the role's.</summary>
    public double InRoleUnit(double value) => Point is null ? value : Units.Convert(value, Point.Unit, Unit);
}

/// <summary>One output, and the derived point in which it lands.</summary>
/// <param name="Unit">The output's unit.</param>
/// <param name="Estimates">The quantity that it is a witness of, by the site or else by the plug-in.</param>
internal sealed record LinkedOutput(OutputInfo Info, Unit Unit, Point? Point, Uncertainty? MethodU, string? Estimates)
{
    /// <summary>How long after a move of its inputs it holds again.</summary>
    public TimeSpan Settles { get; init; }

    /// <summary>The unit in which it is kept: the derived point's, else its own.</summary>
    public Unit KeptUnit => Point?.Unit ?? Unit;

    public double InKeptUnit(double value) => Units.Convert(value, Unit, KeptUnit);

    /// <summary>Standard uncertainty of the method for this value, in the kept unit.</summary>
    public double MethodUInKeptUnit(double value) => Units.ConvertDifference(MethodU?.Of(value) ?? 0, Unit, KeptUnit);
}

/// <summary>A number with its standard uncertainty, in the unit of its source, and its name in words.</summary>
public sealed record Quantity(double Value, double U, string Name);
