using System.Globalization;

namespace Logbook.Plant;

/// <summary>What other files change for the people at the line, in words: limits first, for whoever is on shift judges by them.</summary>
public static class SiteChanges
{
    /// <summary>One line for each change; files that differ in nothing of this kind (a comment, an order) give none.</summary>
    public static IReadOnlyList<string> Between(Site before, Site after) =>
    [
        .. after.Points.SelectMany(point => before.FindPoint(point.Tag) is { } was ? OfPoint(was, point) : []),
        .. Listed("point", before.Points, after.Points, p => p.Tag, _ => ""),
        .. Listed("round", before.Rounds, after.Rounds, r => r.Id, Of),
        .. Listed("calculation", before.Calculations, after.Calculations, c => c.Name, Of),
        .. Listed("person", before.People, after.People, p => p.Code, p => $"{p.Role} of crew {p.Crew ?? "-"}"),
        .. Listed("equipment", before.Equipment, after.Equipment, e => e.Code, _ => ""),
        .. Listed("caution", before.Cautions, after.Cautions, c => c.Hazard, c => string.Join('|', [.. c.Triggers, c.Text, c.Ppe, c.FirstAid, c.Source, c.Revision, c.ApprovedBy])),
    ];

    private static IEnumerable<string> OfPoint(Point was, Point now)
    {
        if (was.Unit != now.Unit)
        {
            return [$"{now.Tag} unit {was.Unit.Name} -> {now.Unit.Name}"];
        }

        (string Name, double? Was, double? Now)[] numbers =
        [
            ("urgent low", was.Limits.UrgentLow, now.Limits.UrgentLow), ("watch low", was.Limits.WatchLow, now.Limits.WatchLow),
            ("watch high", was.Limits.WatchHigh, now.Limits.WatchHigh), ("urgent high", was.Limits.UrgentHigh, now.Limits.UrgentHigh),
            ("lowest possible", was.Lowest, now.Lowest), ("highest possible", was.Highest, now.Highest), ("step", was.Step, now.Step),
        ];
        var behind = now.Unit.Name == "1" ? "" : $" {now.Unit.Name}";
        return
        [
            .. numbers.Where(n => n.Was != n.Now).Select(n => $"{now.Tag} {n.Name} {Number(n.Was)} -> {Number(n.Now)}{behind}"),
            .. was.Stale == now.Stale ? [] : new[] { string.Create(CultureInfo.InvariantCulture, $"{now.Tag} stale {was.Stale.TotalHours:0.##} -> {now.Stale.TotalHours:0.##} h") },
        ];
    }

    private static string Number(double? value) => value?.ToString("0.######", CultureInfo.InvariantCulture) ?? "none";

    private static string Of(Round round) => string.Join('|', [round.Title, round.Schedule is Schedule.At at ? string.Join(' ', at.Times) : round.Schedule.ToString(), round.Early.ToString(), round.Late.ToString(), round.Field.ToString(), .. round.Points]);

    private static string Of(CalculationBinding binding) => string.Join('|', (IEnumerable<string>)
    [
        binding.Use, .. binding.Inputs.OrderBy(i => i.Key, StringComparer.Ordinal).Select(i => $"{i.Key}={i.Value}"),
        .. binding.Outputs.OrderBy(o => o.Key, StringComparer.Ordinal).Select(o => $"{o.Key}>{o.Value}"), .. binding.Lags.OrderBy(l => l.Key, StringComparer.Ordinal).Select(l => $"{l.Key}-{l.Value}"),
    ]);

    private static IEnumerable<string> Listed<T>(string what, IReadOnlyList<T> before, IReadOnlyList<T> after, Func<T, string> name, Func<T, string> content)
    {
        Dictionary<string, string> ByName(IReadOnlyList<T> all) =>
            all.GroupBy(name, StringComparer.OrdinalIgnoreCase).ToDictionary(g => g.Key, g => string.Join('|', g.Select(content)), StringComparer.OrdinalIgnoreCase);
        var (was, now) = (ByName(before), ByName(after));
        return
        [
            .. now.Keys.Where(k => !was.ContainsKey(k)).Select(k => $"{what} {k} is new"),
            .. was.Keys.Where(k => !now.ContainsKey(k)).Select(k => $"{what} {k} is gone"),
            .. now.Where(n => was.TryGetValue(n.Key, out var then) && then != n.Value).Select(n => $"{what} {n.Key} changed"),
        ];
    }
}
