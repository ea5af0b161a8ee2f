namespace Logbook.Plant;

/// <summary>A plug-in's calculation put to work in this site.</summary>
public sealed record CalculationBinding
{
    /// <summary>Unique in the site.</summary>
    public required string Name { get; init; }

    /// <summary>The plug-in's calculation id.</summary>
    public required string Use { get; init; }

    /// <summary>Role to point or constant.</summary>
    public required IReadOnlyDictionary<string, InputSource> Inputs { get; init; }

    /// <summary>Output id to the tag of a derived point.</summary>
    public IReadOnlyDictionary<string, string> Outputs { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Role to how long before this calculation its input is taken.</summary>
    public IReadOnlyDictionary<string, TimeSpan> Lags { get; init; } = new Dictionary<string, TimeSpan>(StringComparer.Ordinal);

    /// <summary>Output id to the quantity that it estimates, beside those that say so themselves.</summary>
    public IReadOnlyDictionary<string, string> Estimates { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Output id to the method's own uncertainty, in place of the plug-in's.</summary>
    public IReadOnlyDictionary<string, Uncertainty> MethodU { get; init; } = new Dictionary<string, Uncertainty>(StringComparer.Ordinal);

    /// <summary>Output id to the readings that really move when the method is off.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Moves { get; init; } = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);

    /// <summary>Output id to how long after a move of its inputs its method holds again, in place of the plug-in's.</summary>
    public IReadOnlyDictionary<string, TimeSpan> Settles { get; init; } = new Dictionary<string, TimeSpan>(StringComparer.Ordinal);

    /// <summary>Where the binding stands in site.toml, for findings about it.</summary>
    public Place Place { get; init; } = Place.Unknown;
}

/// <summary>Where a role's number comes from.</summary>
public abstract record InputSource
{
    /// <summary>A point, read or derived.</summary>
    public sealed record FromPoint(string Tag) : InputSource;

    /// <summary>A constant of the site, with where it comes from and when it was fitted.</summary>
    public sealed record Constant(double Value, Unit? Unit, double U, string Source, DateOnly? Fitted) : InputSource;
}

/// <summary>A linear balance over points; terms may be products of a flow and a concentration. In points' own units.</summary>
public sealed record Balance(string Name, IReadOnlyList<BalanceTerm> Terms, double EqualTo, double U);

/// <summary>A factor times the product of one or two points.</summary>
public sealed record BalanceTerm(double Factor, IReadOnlyList<string> Tags);
