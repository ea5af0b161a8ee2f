namespace Logbook.Plant;

/// <summary>Which readings make which derived points, as the site's calculations link them.</summary>
public sealed class Links
{
    private readonly Dictionary<string, HashSet<string>> _readingsOf = new(StringComparer.OrdinalIgnoreCase);

    public Links(Site site)
    {
        var outputs = site.Calculations.SelectMany(c => c.Outputs.Values.Select(tag => (Tag: tag, From: Inputs(c)))).ToList();
        foreach (var (tag, _) in outputs)
        {
            _readingsOf[tag] = Readings(tag, outputs, new HashSet<string>(StringComparer.OrdinalIgnoreCase));
        }
    }

    /// <summary>True when the derived point is computed from the reading, be it through other derived points.</summary>
    public bool Makes(string reading, string derived) => _readingsOf.TryGetValue(derived, out var readings) && readings.Contains(reading);

    /// <summary>True when <paramref name="count"/> readings are at least half of those that the derived point needs.</summary>
    public bool IsMostly(string derived, int count) => count > 0 && _readingsOf.TryGetValue(derived, out var readings) && 2 * count >= readings.Count;

    /// <summary>True when some derived point needs both.</summary>
    public bool Together(string one, string other) => _readingsOf.Values.Any(r => r.Contains(one) && r.Contains(other));

    private static IReadOnlyList<string> Inputs(CalculationBinding calculation) =>
        [.. calculation.Inputs.Values.OfType<InputSource.FromPoint>().Select(i => i.Tag)];

    private static HashSet<string> Readings(string tag, List<(string Tag, IReadOnlyList<string> From)> outputs, HashSet<string> seen)
    {
        var found = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var sources = outputs.Where(o => o.Tag.Equals(tag, StringComparison.OrdinalIgnoreCase)).SelectMany(o => o.From).ToList();
        if (sources.Count == 0)
        {
            found.Add(tag);
        }

        foreach (var source in sources.Where(seen.Add))
        {
            found.UnionWith(Readings(source, outputs, seen));
        }

        return found;
    }
}
