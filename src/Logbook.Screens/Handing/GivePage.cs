using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>The holder declares each hazard section with one digit: silence in it could be read as safe.</summary>
internal sealed record GivePage(int Selected) : Page
{
    /// <summary>What could hurt in this shift and is over: of its section it is not said that none is recorded.</summary>
    public IReadOnlyList<OverInShift> Over { get; init; } = [];

    private static readonly (string Word, Look Look)[] Answers = [("checked", Look.Plain), ("NOT CHECKED", Look.Watch), ("changed", Look.Strong)];

    // A record has changed what the section says since it was declared.
    private const string DeclareAnew = "ASK ANEW";

    internal static readonly KeyTable Table = new(
        [
            new KeyRow("1 2 3", "checked, NOT CHECKED, changed", "Declares the section under the mark: 1 checked, 2 not checked, 3 changed.", key => key.Digit is >= 1 and <= 3, Declare),
            KeyRow.Named("Enter", "go on", "Goes on to what to do if it turns.", (session, _, _) => Next.Of(session.Open(Giver.IfThen())), KeyName.Enter) with { WhyNot = NotDeclared },
            KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Next.Of(session.Put(Of(session) with { Selected = Moving.Move(Of(session).Selected, key, HazardSections.All.Count, session.Leaf) })), Moving.Keys),
            .. Giver.Keys,
            UsualKeys.Back("Back to Now; what was declared stays."),
            UsualKeys.Help,
        ]);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var rows = HazardSections.All.Select((name, i) => Row(session, name, i)).ToList();
        return new Layout(
            [Line.Of(" You hold the line: declare each of these for the one who comes", Look.Strong), Line.Of($" {session.Facts.Now.InCharge}"), .. Stands(session), Line.Empty],
            rows, Selected, Selected, [Line.Empty, .. InFull(session, HazardSections.All[Selected])]);
    }

    /// <summary>The sections with what is over, wherever the page stands.</summary>
    public static Session Read(Session session, IReadOnlyList<OverInShift> over) => session.Pages.FindIndex(p => p is GivePage) is >= 0 and var at
        ? session with { Pages = session.Pages.SetItem(at, (GivePage)session.Pages[at] with { Over = over }) } : session;

    private static GivePage Of(Session session) => (GivePage)session.Top;

    /// <summary>What is unfinished about the handover.</summary>
    private static IEnumerable<Line> Stands(Session session) =>
        session.Facts.Now.Unfinished.SelectMany(text => TextWidth.Wrap(text, session.Width - 2, 2)).Take(Math.Max(2, session.Height - 20)).Select(l => Line.Of(" " + l, Look.Note));

    private Line Row(Session session, string name, int row)
    {
        var said = session.Giving.Declared.GetValueOrDefault(name);
        var recorded = Recorded(session, name);
        var text = (said == 3 ? $"{session.Giving.Changes[name]}; " : "") + (recorded.Count == 0 ? "none recorded" : recorded[0].Text);
        return Line.Of(
            new Span($" {(row == Selected ? ">" : " ")} {TextWidth.Fit(name, 9)} ", row == Selected ? Look.Chosen : Look.Plain),
            said == 0 ? new Span(TextWidth.Fit("-", 12))
            : session.Giving.Outdated(session.Facts).Contains(name, StringComparer.Ordinal) ? new Span(TextWidth.Fit(DeclareAnew, 12), Look.Watch) : new Span(TextWidth.Fit(Answers[said - 1].Word, 12), Answers[said - 1].Look),
            new Span($" {(recorded.Count > 1 ? FormattableString.Invariant($"{recorded.Count}: ") : "")}{text}"));
    }

    private IEnumerable<Line> InFull(Session session, string name)
    {
        List<Line> lines = [.. Recorded(session, name).SelectMany(h => Gutter.Lines(h.Word, Look.Strong, h.Text, session.Width))];
        var room = Math.Max(3, session.Height - 18);
        return lines.Count <= room ? [.. lines, .. Enumerable.Repeat(Line.Empty, room - lines.Count)] : lines;
    }

    /// <summary>What stands first, then what is over.</summary>
    private List<(string Word, string Text)> Recorded(Session session, string name) =>
    [
        .. session.Facts.Now.Hazards.Select(h => (h.Word, h.Text)).Concat(Over.Select(o => (o.Word, o.Text))).Where(h => HazardSections.Holds(name, h.Word)),
    ];

    private static Next Declare(Session session, Keystroke key, Setting setting)
    {
        return key.Digit == 3 ? Next.Of(session.Open(Changed(session, HazardSections.All[Of(session).Selected]))) : Declared(session, key.Digit!.Value);
    }

    /// <summary>That something changed says nothing without what: one line, shown with the declaration.</summary>
    private static AskPage Changed(Session session, string name) => new($"What changed in {name}?", "a few words, shown with the declaration; Esc leaves it as it was", session.Giving.Changes.GetValueOrDefault(name, ""), (asking, text, _) =>
        string.IsNullOrWhiteSpace(text) ? Next.Of(asking.Say("a few words are needed here"))
            : Declared(asking.Back() with { Giving = asking.Giving with { Changes = asking.Giving.Changes.SetItem(name, text.Trim()) } }, 3)) { NoPin = true };

    private static Next Declared(Session session, int digit)
    {
        var page = Of(session);
        var name = HazardSections.All[page.Selected];
        session = session with { Giving = session.Giving with { Declared = session.Giving.Declared.SetItem(name, digit), Said = session.Giving.Said.SetItem(name, session.Facts.Now.Sections[name]) } };
        var open = Open(session);
        var next = Enumerable.Range(1, HazardSections.All.Count).Select(n => (page.Selected + n) % HazardSections.All.Count).Where(i => open.Contains(HazardSections.All[i])).Select(i => (int?)i).FirstOrDefault();
        return Next.Of(next is { } row ? session.Put(page with { Selected = row }) : session.Say("all are declared: Enter goes on"));
    }

    /// <summary>Sections that are not declared, or that a record has changed since they were.</summary>
    private static List<string> Open(Session session) =>
        [.. HazardSections.All.Where(s => !session.Giving.Declared.ContainsKey(s) || session.Giving.Outdated(session.Facts).Contains(s, StringComparer.Ordinal))];

    private static string? NotDeclared(Session session) => Open(session) is { Count: > 0 } open
        ? $"still to declare: {string.Join(", ", open.Select(s => session.Giving.Declared.ContainsKey(s) ? $"{s} (a record came since you declared it)" : s))}"
        : null;
}
