namespace Logbook.Plant.Reading;

/// <summary>
/// The tags of points.csv, those of faulty rows too, so that one mistake in a row is not told again by every line that
/// names its point. The kind is null where the row does not say.
/// </summary>
internal sealed class KnownPoints
{
    private readonly Dictionary<string, PointKind?> _kinds = new(StringComparer.OrdinalIgnoreCase);

    public IReadOnlyCollection<string> Tags => _kinds.Keys;

    /// <summary>Names of the samples whose readings belong together.</summary>
    public HashSet<string> Samples { get; } = new(StringComparer.Ordinal);

    /// <summary>False when the tag is there already.</summary>
    public bool Add(string tag, PointKind? kind) => _kinds.TryAdd(tag, kind);

    /// <summary>Null when the tag names a point of this kind (any, when none is given); else the mistake.</summary>
    public Mistake? WhyNot(string tag, Place place, PointKind? kind = null)
    {
        if (!_kinds.TryGetValue(tag, out var actual))
        {
            return new Mistake(place, $"point '{tag}' is unknown", Spelling.Accepted(tag, _kinds.Keys));
        }

        return kind is null || actual is null || actual == kind
            ? null
            : new Mistake(place, $"point '{tag}' is {Name(actual.Value)}", $"a {Name(kind.Value)} point is needed");
    }

    private static string Name(PointKind kind) => kind == PointKind.Read ? "read" : "derived";
}
