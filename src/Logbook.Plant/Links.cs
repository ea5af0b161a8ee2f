namespace Logbook.Plant;

/// <summary>Which readings make which derived points, as the site's calculations link them.</summary>
public sealed class Links
{
    private readonly Dictionary<string, HashSet<string>> _readingsOf = new(StringComparer.OrdinalIgnoreCase);
    private readonly ILookup<string, string> _now;

    public Links(Site site)
    {
        var outputs = site.Calculations.SelectMany(c => c.Outputs.Values.Select(tag => (Tag: tag, From: Inputs(c)))).ToList();
        foreach (var (tag, _) in outputs)
        {
            _readingsOf[tag] = Readings(tag, outputs, new HashSet<string>(StringComparer.OrdinalIgnoreCase));
        }

        _now = site.Calculations.SelectMany(c => c.Outputs.Values.SelectMany(tag => InputsNow(c).Select(from => (Tag: tag, From: from)))).ToLookup(l => l.Tag, l => l.From, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>True when the derived point is computed from the reading, be it through other derived points.</summary>
    public bool Makes(string reading, string derived) => _readingsOf.TryGetValue(derived, out var readings) && readings.Contains(reading);

    /// <summary>
    /// The derived points that come at least half from these readings. Each input of a calculation weighs the same, however much
    /// stands behind it; what is taken as it was hours ago does not count.
    /// </summary>
    public IReadOnlySet<string> Mostly(IEnumerable<string> readings)
    {
        var shares = readings.ToDictionary(r => r, _ => 1.0, StringComparer.OrdinalIgnoreCase);
        return _readingsOf.Keys.Where(derived => Share(derived, shares) >= 0.5).ToHashSet(StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>True when some derived point needs both.</summary>
    public bool Together(string one, string other) => _readingsOf.Values.Any(r => r.Contains(one) && r.Contains(other));

    /// <summary>How much of a point comes from the readings, 0 to 1; what is known of others is kept in <paramref name="shares"/>.</summary>
    private double Share(string tag, Dictionary<string, double> shares)
    {
        if (!shares.TryGetValue(tag, out var share))
        {
            shares[tag] = 0; // a reading that is not here, and whatever would take from itself
            shares[tag] = share = _now[tag].Select(source => Share(source, shares)).DefaultIfEmpty(0).Average();
        }

        return share;
    }

    private static IEnumerable<string> InputsNow(CalculationBinding calculation) =>
        calculation.Inputs.Where(i => calculation.Lags.GetValueOrDefault(i.Key) == TimeSpan.Zero).Select(i => i.Value).OfType<InputSource.FromPoint>().Select(i => i.Tag);

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
