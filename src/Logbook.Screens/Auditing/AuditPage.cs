using System.Globalization;
using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>What the audit has of a week: facts as they are, and what is only to be looked at. Nothing in it is counted by person.</summary>
/// <param name="To">The stretch's end; null while it is now.</param>
/// <param name="Flags">In the order shown; null while they are being read.</param>
/// <param name="Filter">Words that a shown flag has, all of them; empty shows every flag.</param>
internal sealed record AuditPage(DateTimeOffset? To, IReadOnlyList<AuditFlag>? Flags, string Filter, int Selected) : Page
{
    private static readonly TimeSpan Week = TimeSpan.FromDays(7);

    internal static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "evidence", "Opens the flag with what it rests on, what innocently explains it, and what would settle it.", (session, _, _) => Next.Of(session.Open(new FlagPage(Of(session).Shown[Of(session).Selected], 0))), KeyName.Enter)
            with { WhyNot = s => Of(s).Shown.Count == 0 ? "no flag is shown" : null },
        KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Next.Of(session.Put(Of(session) with { Selected = Moving.Move(Of(session).Selected, key, Of(session).Shown.Count, session.Leaf) })), Moving.Keys),
        KeyRow.Letter(',', "week before", "The week before.", (session, setting) => Read(session, setting, (Of(session).To ?? setting.Now) - Week)),
        KeyRow.Letter('.', "week after", "The week after.", (session, setting) => Read(session, setting, Of(session).To + Week)) with { WhyNot = s => Of(s).To is null ? "this is the last week" : null },
        KeyRow.Letter('f', "filter", "Shows only flags with some words: a flag's name, a round, a point, a shift.", (session, _) => Next.Of(session.Open(Words(Of(session))))),
        KeyRow.Letter('p', "countersign", "What waits for a signature, and the signing of it.", (session, _) => Next.Of(session.Open(new WaitingPage(0)))) with { WhyNot = s => s.Facts.Line.ToCountersign.IsEmpty ? "nothing waits for a signature" : null },
        KeyRow.Letter('o', "own", "What the audit says of your own walks, by your PIN: where the site cites a policy.", (session, _) => OwnPage.Ask(session)) with { WhyNot = OwnPage.WhyNot },
        KeyRow.Letter('O', "another's", "The same of another, for the readers that the policy names, once the person has answered.", (session, _) => OwnPage.AskOther(session)) with { WhyNot = OwnPage.WhyNot },
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public IReadOnlyList<AuditFlag> Shown => [.. (Flags ?? []).Where(Has)];

    /// <summary>What is being read; null when nothing is.</summary>
    public ReadAudit? Reading { get; init; }

    public static Next Open(Session session, Setting setting)
    {
        var asked = Asked(session, null, setting);
        return Next.Of(session.Open(new AuditPage(null, null, "", 0) { Reading = asked }), asked);
    }

    /// <summary>Of a week that was left meanwhile nothing is taken.</summary>
    public static Session Taken(Session session, AuditRead read) => session with
    {
        Pages = session.Pages.ConvertAll(p => p is AuditPage page && page.Reading == read.Asked ? page with { Reading = null, Flags = [.. AuditGroups.Of(read.Flags).SelectMany(g => g.Flags)], Selected = 0 } : p),
    };

    public override Layout Draw(Session session)
    {
        var to = To ?? session.Clock;
        var head = Line.Of(new Span(" Audit", Look.Strong), new Span($"   {Say.Day(session.Site, Begin(session, to))} to {(To is null ? "now" : Say.Day(session.Site, to))}{(Filter.Length == 0 ? "" : $"   flags with '{Filter}'")}"))
            .With(new Span("facts, never a sum per person ", Look.Faint), session.Width);
        var (body, line) = Body(session);
        return new Layout([head, .. HazardLines.InShort(session)], body, line, line, []);
    }

    private (List<Line> Lines, int Selected) Body(Session session)
    {
        if (Flags is null)
        {
            return ([Line.Of(" reading ... other keys are answered meanwhile", Look.Faint)], 0);
        }

        var (lines, at, row) = (new List<Line>(), 0, 0);
        foreach (var (title, flags) in AuditGroups.Of(Shown))
        {
            lines.Add(Line.Of(FormattableString.Invariant($" {title} ({flags.Count})"), Look.Strong));
            foreach (var flag in flags)
            {
                at = row == Selected ? lines.Count : at;
                lines.AddRange(Row(session, flag, row++ == Selected));
            }
        }

        return (lines.Count == 0 ? [Line.Of(" no flag in this week", Look.Faint)] : lines, at);
    }

    /// <summary>A line each; the one under the mark whole.</summary>
    private static IEnumerable<Line> Row(Session session, AuditFlag flag, bool chosen)
    {
        var look = chosen ? Look.Chosen : Look.Plain;
        var at = Plant.Calendar.ToSite(session.Site, flag.At).ToString("d MMM HH:mm", CultureInfo.InvariantCulture);
        var before = $" {(chosen ? ">" : " ")} {TextWidth.Right(at, 12)} {TextWidth.Fit(Name(flag), 16)} ";
        return TextWidth.Wrap(flag.Text, session.Width - before.Length - 1, chosen ? int.MaxValue : 1)
            .Select((line, i) => Line.Of((i == 0 ? before : new string(' ', before.Length)) + line, look));
    }

    /// <summary>The flag's name as words.</summary>
    public static string Name(AuditFlag flag) => flag.Flag.Replace('-', ' ');

    private bool Has(AuditFlag flag) => Filter.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word =>
        new[] { flag.Flag, Name(flag), flag.Text, flag.ShiftId, flag.Round ?? "", flag.Point ?? "" }.Any(text => text.Contains(word, StringComparison.OrdinalIgnoreCase)));

    private static AuditPage Of(Session session) => (AuditPage)session.Top;

    private static AskPage Words(AuditPage page) => new(
        "Show only flags with these words", $"names of flags, rounds, points, shifts; empty shows all{(page.Filter.Length == 0 ? "" : $". Now shown: {page.Filter}")}", "",
        (asking, text, _) => Next.Of(asking.Back().Put(page with { Filter = text.Trim(), Selected = 0 })));

    private static Next Read(Session session, Setting setting, DateTimeOffset? to)
    {
        var end = to >= setting.Now ? null : to;
        var asked = Asked(session, end, setting);
        return Next.Of(session.Put(Of(session) with { To = end, Flags = null, Selected = 0, Reading = asked }), asked);
    }

    private static ReadAudit Asked(Session session, DateTimeOffset? to, Setting setting) => new(Begin(session, to ?? setting.Now), to ?? setting.Now);

    /// <summary>A week before, from the start of the shift on: a shift that is cut in two tells half of what it was.</summary>
    private static DateTimeOffset Begin(Session session, DateTimeOffset to) => Plant.Calendar.ShiftAt(session.Site, to - Week).Start;
}

/// <summary>One flag: innocent explanations and what would settle it stand beside its evidence.</summary>
internal sealed record FlagPage(AuditFlag Flag, int Scroll) : Page, IScrolled
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "its record", "Opens the record that it rests on.", (session, _, _) => Next.Of(session, new ReadRecord(Of(session).Flag.Seq!.Value)), KeyName.Enter) with { WhyNot = s => Of(s).Flag.Seq is null ? "it rests on no single record" : null },
        KeyRow.Letter('g', "graph", "The point over time.", (session, _) => GraphPage.Open(session, Of(session).Flag.Point!)) with { WhyNot = s => s.Site.FindPoint(Of(s).Flag.Point ?? "") is null ? "it is about no point" : null },
        Scrolling.Keys,
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([Line.Of($" {AuditPage.Name(Flag)}", Look.Strong), Line.Empty], Lines(session), Scroll, Scroll, []) { Top = Scroll };

    private List<Line> Lines(Session session) =>
    [
        .. Gutter.Lines("what", Look.Strong, Flag.Text, session.Width),
        .. Flag.Evidence.SelectMany((e, i) => Gutter.Lines(i == 0 ? "evidence" : "", Look.Strong, e, session.Width)),
        .. Gutter.Lines("shift", Look.Strong, $"{Flag.ShiftId}, {Say.Day(session.Site, Flag.At)}", session.Width),
        .. Flag.Round is { } round ? Gutter.Lines("round", Look.Strong, session.Site.FindRound(round)?.Title ?? round, session.Width) : [],
        .. Flag.Point is { } tag ? Gutter.Lines("point", Look.Strong, $"{tag} {session.Site.FindPoint(tag)?.Description}", session.Width) : [],
    ];

    private static FlagPage Of(Session session) => (FlagPage)session.Top;
}
