using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>Limits that nobody has put in force, tried on the past: what stood out by those of its day gives way to what would have by these.</summary>
internal sealed class TriedLimits
{
    private readonly Site _tried;
    private readonly Dictionary<string, TriedLimit> _changed;

    /// <param name="inForce">The site in force.</param>
    /// <param name="tried">The site whose limits are tried.</param>
    public TriedLimits(Site inForce, Site tried)
    {
        _tried = tried;
        _changed = tried.Points.Where(p => inForce.FindPoint(p.Tag) is { } now && !Same(now, p))
            .ToDictionary(p => p.Tag, p => new TriedLimit(p.Tag, p.Description, 0, 0), StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The points whose limits are others than those in force.</summary>
    public IReadOnlyList<TriedLimit> Changed => [.. _changed.Values];

    public Sheet Judge(Sheet sheet, Standstill standstill)
    {
        var read = sheet.Readings.Where(r => r.Value is not null).Select(r => (Point: Tried(r.Point, r.Unit), Value: r.Value!.Value, r.At));
        var computed = sheet.Results.Select(r => (Point: Tried(r.Point, r.Unit), r.Value, sheet.At));
        var judged = read.Concat(computed).Where(j => j.Point is not null).ToList();
        var anew = judged.SelectMany(j => LimitCheck.Of(j.Point!, j.Value, standstill.AtWork(j.Point!.Equipment, j.At)));
        var tags = judged.Select(j => j.Point!.Tag).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return sheet with
        {
            Findings = [.. sheet.Findings.Where(f => !(LimitCheck.IsLimit(f) && f.Point is { } tag && tags.Contains(tag))).Concat(anew).OrderByDescending(f => f.Level)],
        };
    }

    public void Count(Sheet then, Sheet tried)
    {
        foreach (var limit in Changed)
        {
            _changed[limit.Point] = limit with { Then = limit.Then + Beyond(then, limit.Point), Tried = limit.Tried + Beyond(tried, limit.Point) };
        }
    }

    private static int Beyond(Sheet sheet, string tag) => sheet.Findings.Any(f => LimitCheck.IsLimit(f) && tag.Equals(f.Point, StringComparison.OrdinalIgnoreCase)) ? 1 : 0;

    /// <summary>A value in another unit than the tried point's is left as it was judged.</summary>
    private Point? Tried(string? tag, string unit) => tag is not null && _tried.FindPoint(tag) is { } point && point.Unit.Name == unit ? point : null;

    private static bool Same(Point a, Point b) => a.Limits == b.Limits && a.Always == b.Always && a.Choices.SequenceEqual(b.Choices);
}

/// <summary>How often a point stood out by its limits: as they were then, and by those that are tried.</summary>
public sealed record TriedLimit(string Point, string Description, int Then, int Tried);
