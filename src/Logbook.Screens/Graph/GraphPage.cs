using System.Collections.Immutable;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>One or more points over time, one below the other, each with its own axis.</summary>
/// <param name="Points">Tags, in the order in which they were added.</param>
/// <param name="Series">What was read of them; of the window before while a new one is being read.</param>
/// <param name="Cursor">The time under the cursor; null for the newest value.</param>
internal sealed record GraphPage(ImmutableList<string> Points, GraphWindow Window, ImmutableList<GraphSeries> Series, DateTimeOffset? Cursor) : Page
{
    /// <summary>Beside more of them none has lines enough.</summary>
    public const int Most = 4;

    internal static readonly KeyTable Table = new(
        KeyRow.Named("Left Right", "values", "Moves the cursor from value to value; Home and End to the first and the last one.", Move, KeyName.Left, KeyName.Right, KeyName.Home, KeyName.End),
        KeyRow.Letter('+', "closer", "Fewer hours, around the cursor.", (session, setting) => Zoom(session, setting, -1)) with { WhyNot = s => Of(s).Window.WhyNotCloser },
        KeyRow.Letter('-', "wider", "More hours, up to thirty days.", (session, setting) => Zoom(session, setting, 1)) with { WhyNot = s => Of(s).Window.WhyNotWider },
        KeyRow.Letter(',', "back", "One shift back.", (session, setting) => Walk(session, setting, -1)),
        KeyRow.Letter('.', "on", "One shift on.", (session, setting) => Walk(session, setting, 1)) with { WhyNot = s => Of(s).Window.Ends is null ? "this is now" : null },
        KeyRow.Letter('p', "point", "Adds another point below, with an axis of its own.", (session, _) => Next.Of(session.Open(FinderPage.ForPoint("Which point beside it?", Add))))
            with { WhyNot = s => Of(s).Points.Count == Most ? "four points are the most" : null },
        KeyRow.Named("Delete", "", "Takes the last point away.", (session, _, _) => Read(session, Of(session) with { Points = Of(session).Points.RemoveAt(Of(session).Points.Count - 1) }), KeyName.Delete, KeyName.Backspace)
            with { WhyNot = s => Of(s).Points.Count == 1 ? "it is the only one: Esc goes back" : null },
        KeyRow.Named("Enter", "record", "Opens the record of the value under the cursor.", (session, _, _) => Next.Of(session, new ReadRecord(Of(session).Under(session)[0].Value.Seq)), KeyName.Enter)
            with { WhyNot = s => Of(s).Under(s).Count == 0 ? "there is no value" : null },
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override (string Title, IReadOnlyList<string> Marks) Legend => ("Marks of the graph; a limit is drawn as it was then, and no value on its row",
        ["o value", "^ above", "v below", "c corrected", "C corrected, beyond", "n not taken", "- watch limit, w at its edge", "= urgent limit, u at its edge", ": a shift begins", "' a full hour", "| the cursor"]);

    public static Next Open(Session session, string point)
    {
        var page = new GraphPage([point], GraphWindow.LastDay, [], null);
        return Next.Of(session.Open(page), page.Ask(session));
    }

    public ReadSeries Ask(Session session) => new(Points, Window.From(session.Clock), Window.To(session.Clock));

    public override Layout Draw(Session session) => GraphDrawing.Draw(session, this);

    /// <summary>The times of all values, in order, each once.</summary>
    public IReadOnlyList<DateTimeOffset> Times => [.. Series.SelectMany(s => s.Values).Select(v => v.At).Distinct().Order()];

    /// <summary>The newest value of each point up to the cursor.</summary>
    public IReadOnlyList<(GraphSeries Of, SeriesValue Value)> Under(Session session)
    {
        var at = Cursor ?? Window.To(session.Clock);
        return [.. Series.Select(s => (s, s.Values.LastOrDefault(v => v.At <= at))).Where(v => v.Item2 is not null).Select(v => (v.s, v.Item2!))];
    }

    /// <summary>The page on the screen or under it, with what was read for it.</summary>
    public static Next Taken(Session session, SeriesRead read)
    {
        var at = session.Pages.FindLastIndex(p => p is GraphPage graph && graph.Points.SequenceEqual(read.Series.Select(s => s.Point.Tag), StringComparer.OrdinalIgnoreCase));
        return Next.Of(at < 0 ? session : session with { Pages = session.Pages.SetItem(at, (GraphPage)session.Pages[at] with { Series = [.. read.Series] }) });
    }

    private static GraphPage Of(Session session) => (GraphPage)session.Top;

    private static Next Read(Session session, GraphPage page) => Next.Of(session.Put(page), page.Ask(session));

    private static Next Add(Session session, string point) => Of(session).Points.Contains(point, StringComparer.OrdinalIgnoreCase)
        ? Next.Of(session.Say($"{point} is drawn already"))
        : Read(session, Of(session) with { Points = Of(session).Points.Add(point) });

    private static Next Zoom(Session session, Setting setting, int step) => Read(session, Of(session) with { Window = Of(session).Window.Zoomed(step, Of(session).Cursor, setting.Now) });

    private static Next Walk(Session session, Setting setting, int shifts) =>
        Read(session, Of(session) with { Window = Of(session).Window.Walked(shifts, session.Site, setting.Now), Cursor = null });

    private static Next Move(Session session, Keystroke key, Setting setting)
    {
        var (page, times) = (Of(session), Of(session).Times);
        if (times.Count == 0)
        {
            return Next.Of(session.Say("there is no value"));
        }

        var at = page.Cursor is { } cursor ? times.TakeWhile(t => t < cursor).Count() : times.Count - 1;
        var to = key.Name switch { KeyName.Left => at - 1, KeyName.Right => at + 1, KeyName.Home => 0, _ => times.Count - 1 };
        return Next.Of(session.Put(page with { Cursor = times[Math.Clamp(to, 0, times.Count - 1)] }));
    }
}
