using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What matters now, in the order in which a person must see it.</summary>
public sealed record NowView
{
    public required string Site { get; init; }

    public required DateTimeOffset At { get; init; }

    public required string ShiftId { get; init; }

    /// <summary>Who holds the line, in words; that nobody does, and whom to call.</summary>
    public required string InCharge { get; init; }

    /// <summary>True when somebody holds the line.</summary>
    public required bool Held { get; init; }

    /// <summary>What is unfinished about the handover, each in one line: pages not opened, not yet, questions, what a supervisor has still to sign.</summary>
    public required IReadOnlyList<string> Unfinished { get; init; }

    /// <summary>What the one before said to who holds the line, if-thens and own words: it holds until that one hands over in turn.</summary>
    public IReadOnlyList<NoteLine> FromGiver { get; init; } = [];

    /// <summary>What can hurt, each in full. Never counted, cut or demoted.</summary>
    public required IReadOnlyList<HazardLine> Hazards { get; init; }

    /// <summary>Hazard section to what is recorded in it, whatever the clock says: it is another text when a record has changed it.</summary>
    public required IReadOnlyDictionary<string, string> Sections { get; init; }

    /// <summary>What stands out, worst first.</summary>
    public required IReadOnlyList<OpenFinding> StandsOut { get; init; }

    /// <summary>What was urgent and waits for an answer: see <see cref="StillOpen"/>.</summary>
    public IReadOnlyList<NoteLine> ToAnswer { get; init; } = [];

    /// <summary>The systems in the liquor's order, each with one mark: see <see cref="LineMarks"/>.</summary>
    public required IReadOnlyList<(string Area, char Mark)> Line { get; init; }

    /// <summary>Rounds of the site that are open or missed in this shift.</summary>
    public required IReadOnlyList<RoundNow> Rounds { get; init; }

    /// <summary>What is read instead of defeated trips and is open or missed in this shift, and what is to be read next.</summary>
    public required IReadOnlyList<RoundNow> Instead { get; init; }

    /// <summary>Standing orders that hold, oldest first.</summary>
    public required IReadOnlyList<StandingOrder> Orders { get; init; }

    /// <summary>Orders that were withdrawn and whose end somebody who had read them has not read yet, oldest first.</summary>
    public required IReadOnlyList<StandingOrder> Withdrawn { get; init; }

    /// <summary>The upset that lasts; null when none is declared.</summary>
    public required Upset? Upset { get; init; }

    /// <summary>Since when it lasts, when it was declared if that was later, by whom and why: what it spares is spared by that person's word.</summary>
    public string? UpsetInWords { get; init; }

    /// <summary>Jumps of the clock that nobody has acknowledged.</summary>
    public required IReadOnlyList<OpenClockJump> ClockJumps { get; init; }

    public required IReadOnlyList<CarriedItem> Carried { get; init; }

    /// <summary>What the tanks hold, newest reading each, in the liquor's order.</summary>
    public required IReadOnlyList<Stock> Stocks { get; init; }

    /// <summary>True when the folder's files differ from those in force.</summary>
    public required bool FilesDiffer { get; init; }

    /// <summary>How far the mill's server has come; null when nothing is forwarded.</summary>
    public ServerView? Server { get; init; }

    public static NowView Of(Desk desk)
    {
        var (site, state, now) = (desk.Site, LastThatStands.In(desk, desk.State), desk.Now);
        var (doubted, later) = (new DoubtsNow(site, desk.Store, state), new PutRightLater(desk));
        var shift = Calendar.ShiftAt(site, now);
        var checks = DueList.Between(desk, shift.Start, shift.End);
        var rounds = RoundNow.InShift(site, checks);
        return new NowView
        {
            Site = site.Name,
            At = now,
            ShiftId = shift.Id,
            InCharge = Handover.InCharge.Of(desk),
            Held = state.Line.Holder is not null,
            Unfinished = Handover.InCharge.Unfinished(desk),
            FromGiver = state.Line.Prepared is null ? BeforeSigning.ToHolder(desk) : [],
            ToAnswer = [.. StillOpen.ToAnswer(state, at => Say.Time(site, at, now))],
            Hazards = RemarkedOn.Beside(desk, site, state, now, Handover.Hazards.Of(site, state, now, InsteadOfTrips.NotOnTime(desk, state, shift, checks), GasBegun.Of(desk, site, state))),
            Sections = HazardSections.Recorded(site, state),
            StandsOut = [.. InOrder(site, [.. state.Findings.Values.SelectMany(f => f)]).Select(f => Told(desk, f, See(doubted, f) + later.Words(f)))],
            Line = LineRow.Of(site, state, now),
            Rounds = [.. rounds.Where(r => !InsteadOfTrips.Is(r.Round))],
            Instead = [.. rounds.Where(r => InsteadOfTrips.Is(r.Round)), .. RoundNow.NextInstead(desk, rounds)],
            Orders = [.. state.Orders.Where(o => o.HoldsAt(now))],
            Withdrawn = [.. state.Orders.Where(o => o.Seen.Keys.Any(o.EndIsNewTo))],
            Upset = state.Upset,
            UpsetInWords = state.Upset is { } upset ? Told(desk, upset) : null,
            ClockJumps = state.ClockJumps,
            Carried = state.Carried,
            Stocks = Stock.Of(site, state),
            Server = desk.Server?.Invoke(state.Head),
            FilesDiffer = state.Files is not null && !Same(state.Files.Texts, desk.Files.Texts),
        };
    }

    /// <summary>What hangs on a reading that does not fit says so here as in the note, and so does what was put right since and what was done about it.</summary>
    private static OpenFinding Told(Desk desk, OpenFinding open, string beside)
    {
        var answered = Answered.Of(desk, open) is { } answer ? $"; {answer.Words(desk.Site, desk.Now)}" : "";
        return beside.Length + answered.Length == 0 ? open : open with { Finding = open.Finding with { Text = open.Finding.Text + beside + answered } };
    }

    private static string See(DoubtsNow doubted, OpenFinding open) => doubted.See(open) is { } reading ? $" (doubted: see {reading})" : "";

    private static string Told(Desk desk, Upset upset)
    {
        var declared = desk.Store.Read(upset.Seq).First().Entered;
        var afterwards = declared - upset.Began > RecordFacts.ToldAtOnce ? $", declared only at {Say.Time(desk.Site, declared, desk.Now)}" : "";
        return $"since {Say.Time(desk.Site, upset.Began, desk.Now)}{afterwards}, {Say.Person(desk.Site, upset.By)}{(string.IsNullOrWhiteSpace(upset.Why) ? "" : ": " + Say.Visible(upset.Why))}";
    }

    /// <summary>The worst first, of one level what can hurt people: by what is said of a broken limit, then what the site has a caution for; of one entry what was read before what is computed from it.</summary>
    private static IEnumerable<OpenFinding> InOrder(Site site, List<OpenFinding> open)
    {
        var links = new Links(site);
        bool IsComputed(OpenFinding f) => f.Finding.Point is { } tag && site.FindPoint(tag) is { Kind: PointKind.Derived };
        var cautioned = site.Cautions.SelectMany(c => c.Triggers).ToHashSet(StringComparer.OrdinalIgnoreCase);
        (int, bool) Hurts(OpenFinding f) => (LimitWords.Place(f.Finding), !cautioned.Contains($"limit:{f.Finding.Point}"));
        (int, bool) Place(OpenFinding f) => open
            .Where(o => o == f || (o.Seq == f.Seq && o.Finding.Level == f.Finding.Level && o.Finding.Point is { } made && f.Finding.Point is { } tag && links.Makes(tag, made)))
            .Min(Hurts);
        return open.OrderByDescending(f => f.Finding.Level).ThenBy(Place).ThenByDescending(f => f.At).ThenBy(f => f.Seq).ThenByDescending(Doubts).ThenBy(IsComputed).ThenBy(f => f.Number);
    }

    /// <summary>That a reading does not fit explains what else its entry found: it stands before that.</summary>
    private static bool Doubts(OpenFinding open) => open.Finding.Code.StartsWith("examine.", StringComparison.Ordinal);

    private static bool Same(IReadOnlyDictionary<string, string> one, IReadOnlyDictionary<string, string> other) =>
        one.Count == other.Count && one.All(file => other.TryGetValue(file.Key, out var text) && string.Equals(file.Value, text, StringComparison.Ordinal));
}

/// <summary>One thing that can hurt.</summary>
/// <param name="Word">One word of its kind: <c>inside</c>, <c>permit</c>, <c>locked</c>, <c>defeated</c>, <c>out</c>, <c>acid</c>, <c>gas</c>, or <c>seen</c> for a safety point that was seen bad.</param>
public sealed record HazardLine(string Word, string Text, DateTimeOffset Since, long Seq)
{
    /// <summary>Which thing it is, for where a line has room for no more.</summary>
    public string Name { get; init; } = Text.Split(':', ',')[0];

    /// <summary>The text without whose it is, who opened, counted and saw it, for where lines are few.</summary>
    public string Brief { get; init; } = Text;

    /// <summary>For the page that is read before the line is taken: the text, who looked last or that nobody did, and its record.</summary>
    public string OnPage { get; init; } = Text;

    /// <summary>The findings that it tells of: they need not be told beside it.</summary>
    public IReadOnlyList<OpenFinding> Findings { get; init; } = [];

    /// <summary>The records of what was written of it, which stands in the line.</summary>
    public IReadOnlyList<long> Remarks { get; init; } = [];

    /// <summary>What a round saw of the thing last, in words; empty when none did.</summary>
    public string LastLook { get; init; } = "";

    /// <summary>The line with what else is known of the same thing.</summary>
    internal HazardLine With(IReadOnlyList<(string InFull, string Brief)> beside, string lastLook, IReadOnlyList<OpenFinding> findings)
    {
        string Whole(string text, IEnumerable<string> more) => string.Join(' ', more.Prepend(text).Append(lastLook).Where(w => w.Length > 0));
        return this with
        {
            Text = Whole(Text, beside.Select(b => b.InFull)), Brief = Whole(Brief, beside.Select(b => b.Brief)), OnPage = Whole(OnPage, beside.Select(b => b.Brief)), LastLook = lastLook, Findings = findings,
        };
    }
}
