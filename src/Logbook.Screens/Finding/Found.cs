using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Something with a name that Enter opens.</summary>
/// <param name="What">point, equipment, key, page or record.</param>
/// <param name="Open">Opens it; the finder is gone by then.</param>
/// <param name="WhyNot">Why it does nothing just now; null when it does.</param>
internal sealed record Found(string What, string Name, string Detail, Func<Session, Setting, Next> Open, Func<Session, string?> WhyNot)
{
    public Found(string what, string name, string detail, Func<Session, Setting, Next> open)
        : this(what, name, detail, open, _ => null)
    {
    }

    private bool Has(string[] words) => Array.TrueForAll(words, w => Name.Contains(w, StringComparison.OrdinalIgnoreCase) || Detail.Contains(w, StringComparison.OrdinalIgnoreCase));

    /// <summary>How well it begins with the text: by its name, by what it is, not at all. A tag tells little of what somebody looks for by a word.</summary>
    private int Begins(string text) => Name.StartsWith(text.Trim(), StringComparison.OrdinalIgnoreCase) ? 2 : Detail.StartsWith(text.Trim(), StringComparison.OrdinalIgnoreCase) ? 1 : 0;

    /// <summary>Everything that has all the words; what begins with them first.</summary>
    public static IReadOnlyList<Found> All(Session session, string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return
        [
            .. Record(text),
            .. Commands().Concat(Points(session, GraphPage.Open)).Concat(Equipment(session)).Where(f => words.Length > 0 && f.Has(words))
                .OrderByDescending(f => f.Begins(text)).ThenByDescending(f => f.Name.Contains(text.Trim(), StringComparison.OrdinalIgnoreCase)),
            .. words.Length == 0 ? [] : new[] { new Found("records", $"with '{text.Trim()}'", "in the log, newest first", (s, _) => LogReading.Open(s, text.Trim())) },
        ];
    }

    public static IReadOnlyList<Found> OfPoints(Session session, string text, Func<Session, string, Next> then)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return [.. Points(session, then).Where(f => f.Has(words)).OrderByDescending(f => f.Begins(text))];
    }

    public static IReadOnlyList<Found> OfEquipment(Session session, string text, bool areas, Func<Session, string, Next> then)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var known = session.Site.Equipment.OrderBy(e => EquipmentWords.Runs(session, e.Code))
            .Select(e => new Found("equipment", e.Code, $"{EquipmentWords.Short(session, e.Code)}; {e.Name}{(AreaWords.Of(e.Area) is var area && e.Name.Contains(area, StringComparison.OrdinalIgnoreCase) ? "" : $", {area}")}", (s, _) => then(s, e.Code)))
            .Concat(areas ? Area.All.Select(a => new Found("area", a, AreaWords.Of(a), (s, _) => then(s, a))) : []);
        return [.. known.Where(f => f.Has(words)).OrderByDescending(f => f.Begins(text))];
    }

    private static IEnumerable<Found> Points(Session session, Func<Session, string, Next> then) =>
        session.Site.Points.Select(p => new Found("point", p.Tag, $"{p.Description}, {AreaWords.Of(p.Area)}", (s, _) => then(s, p.Tag)));

    private static IEnumerable<Found> Equipment(Session session) =>
        session.Site.Equipment.Select(e => new Found("equipment", e.Code, $"{e.Name}: its records", (s, _) => LogReading.Open(s, e.Name)));

    /// <summary>The keys of Now do what they do; those of other pages say where they are.</summary>
    private static IEnumerable<Found> Commands() => NowPage.Commands
        .Select(row => new Found("key", $"{row.Keys} {row.Word}", row.Help, (s, setting) => row.Does(s, new Keystroke(KeyName.Written, row.Keys.EnumerateRunes().First()), setting), s => s.Top is NowPage ? row.WhyNot(s) : "it is a key of Now: Esc leads there"))
        .Concat(Pages.SelectMany(page => page.Keys.Rows.Where(r => r.Word.Length > 0 && r.Keys is not ("Esc" or "?" or "Enter"))
            .Select(row => new Found("key", $"{row.Keys} {row.Word}", $"{page.Where}: {row.Help}", (s, _) => Next.Of(s.Say($"{row.Keys} {page.Where}: {row.Help}"))))));

    private static readonly (string Where, KeyTable Keys)[] Pages =
    [
        ("in a round", RoundKeys.Table), ("in the log", LogPage.Table), ("in the graph", GraphPage.Table), ("while handing over", GivePage.Table), ("while taking over", ReadPage.Table),
        ("in the audit", AuditPage.Table), ("on what is carried", CarriedPage.Table), ("on orders", OrdersPage.Table),
    ];

    private static IEnumerable<Found> Record(string text) => long.TryParse(text.Trim().TrimStart('#'), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var seq) && seq > 0
        ? [new Found("record", Say.Ref(seq), "opens it", (s, _) => Next.Of(s, new ReadRecord(seq)), s => seq > s.Facts.Head.Seq ? $"the last record is {s.Facts.Head.Seq}" : null)]
        : [];
}
