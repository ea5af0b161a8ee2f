using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// What one kind of finding said about one point over the shift, or says since before it: one excursion, one line, with its
/// worst, how often, and the point's value now. Two urgent excursions are two events and two lines; what was only to watch is
/// one line, with how many there were. Notes are left out; what asks for nothing does not stand between things that do.
/// </summary>
/// <param name="Over">True when a later value is without it.</param>
/// <param name="Brief">What it was at its worst and when, for a line with others that are over.</param>
internal sealed record Excursion(string? Point, Level Worst, DateTimeOffset First, string Text, bool Over, string Brief)
{
    /// <summary>The text, of a doubt without its evidence: that stands in the record it names.</summary>
    public string Short { get; private init; } = Text;

    /// <summary>The text without its level.</summary>
    public string Plain { get; private init; } = Text;

    /// <summary>The code of its first finding.</summary>
    public string Code { get; private init; } = "";

    /// <summary>The record in which it was noticed first.</summary>
    public long Seq { get; private init; }

    /// <summary>How far down it stands among what is as urgent: what can hurt people first.</summary>
    public int Place { get; private init; }

    /// <summary>What was done about it, in sentences; empty while nobody has said.</summary>
    public string Answers { get; private init; } = "";

    /// <summary>When it was noticed last.</summary>
    public DateTimeOffset Last { get; private init; } = First;

    /// <summary>The doubted reading on which its value hangs; null when it hangs on none.</summary>
    public string? HangsOn { get; private init; }

    /// <summary>What lasts stands before what is over, each by its level, and of that what can hurt people first: the present is read first.</summary>
    public static IReadOnlyList<Excursion> Of(ShiftFacts facts)
    {
        var stories = facts.Entries
            .SelectMany(e => e.Entry.Findings.Select(f => new Noticed(Time(e.Record, e.Entry, f), e.Record.Seq, f) { TakenBack = IsTakenBack(e.Entry, f) }))
            .Concat(StillStanding(facts))
            .Where(n => n.Finding.Level >= Level.Watch)
            .GroupBy(n => (n.Finding.Point, Kind: n.Finding.LimitSide ?? n.Finding.Code.Split('.')[0])) // watch and urgent on one side are one story
            .SelectMany(g => Stories(facts, [.. Counted([.. g]).OrderBy(n => n.At).ThenBy(n => n.Seq)]))
            .Where(s => !UrgentBefore.Is(s.Noticed[0].Finding) || !IsOver(facts, s)) // once the point was read again the correction itself tells of it
            .ToList();
        var lasting = stories.Where(s => !IsOver(facts, s)).Select(s => s.Noticed[0].Finding.Point).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        return [.. stories.Select(s => Fold(facts, s, lasting)).OrderBy(e => e.Over).ThenByDescending(e => e.Worst).ThenBy(e => e.Place).ThenBy(e => e.First).ThenBy(e => Computed(facts, e.Point))];
    }

    /// <summary>What was read stands before what is computed from it.</summary>
    private static bool Computed(ShiftFacts facts, string? tag) => tag is not null && facts.Site.FindPoint(tag) is { Kind: PointKind.Derived };

    /// <summary>A value that was taken back counts nowhere: what stands again beside it was noticed at the reading before, and is counted there.</summary>
    private static List<Noticed> Counted(List<Noticed> noticed) => noticed.TrueForAll(n => n.TakenBack) ? noticed : noticed.FindAll(n => !n.TakenBack);

    private static bool IsTakenBack(Entry entry, Finding finding) =>
        finding.Again == true && entry.Readings.Any(r => r.NotTaken && r.Point.Equals(finding.Point, StringComparison.OrdinalIgnoreCase));

    private static IEnumerable<Story> Stories(ShiftFacts facts, List<Noticed> noticed)
    {
        var events = Events(facts, noticed);
        var urgent = events.FindAll(e => e.Exists(n => n.Finding.Level == Level.Urgent));
        var watch = events.Except(urgent).ToList();
        return [.. urgent.Select(e => new Story(e, 1)), .. watch.Count == 0 ? [] : new[] { new Story([.. watch.SelectMany(e => e)], watch.Count) }];
    }

    private static bool IsOver(ShiftFacts facts, Story story) => Later(facts, story.Noticed[^1]) is { Count: > 0 };

    /// <summary>An event ends with a value of the point without the finding.</summary>
    private static List<List<Noticed>> Events(ShiftFacts facts, List<Noticed> noticed)
    {
        var times = noticed.Select(n => n.At).ToHashSet();
        var calm = noticed[0].Finding.Point is { } tag && facts.Series.TryGetValue(tag, out var series) ? series.Select(s => s.At).Where(at => !times.Contains(at)).ToList() : [];
        var events = new List<List<Noticed>>();
        foreach (var one in noticed)
        {
            if (events.Count == 0 || calm.Exists(at => at > events[^1][^1].At && at < one.At))
            {
                events.Add([]);
            }

            events[^1].Add(one);
        }

        return events;
    }

    /// <summary>What was found before the shift and that no later reading has cleared.</summary>
    private static IEnumerable<Noticed> StillStanding(ShiftFacts facts) =>
        facts.State.Findings.Values.SelectMany(f => f).Where(f => f.At < facts.Shift.Start).OrderBy(f => f.Seq).ThenBy(f => f.Number).Select(f => new Noticed(f.At, f.Seq, f.Finding));

    private static DateTimeOffset Time(JournalRecord record, Entry entry, Finding finding) =>
        entry.Readings.FirstOrDefault(r => r.Point.Equals(finding.Point, StringComparison.OrdinalIgnoreCase))?.At ?? record.At;

    /// <param name="lasting">Points of which something lasts: what they are now stands there.</param>
    private static Excursion Fold(ShiftFacts facts, Story story, HashSet<string> lasting)
    {
        var (noticed, events) = story;
        // Of a broken limit the value furthest beyond it, of anything else the newest words.
        var limit = noticed[0].Finding.Code.StartsWith("limit.", StringComparison.Ordinal);
        var last = noticed[^1];
        var later = Later(facts, last);
        var over = IsOver(facts, story);
        // What only stands since nothing compared it was not noticed again; while it stands its words say so.
        var anew = noticed.FindAll(n => n.Finding.Of is null);
        var stands = !over && last.Finding.Of is not null;
        var worst = (stands || anew.Count == 0 ? noticed : anew).MaxBy(n => (n.Finding.Level, limit ? Beyond(facts, n) : 0, n.At))!;
        var above = over && lasting.Contains(last.Finding.Point!);
        // Of a choice only its worst is counted: what was read after that is another one, and is said.
        var choice = noticed[0].Finding.Code.StartsWith("choice.", StringComparison.Ordinal);
        var counted = choice ? noticed.FindAll(n => n.Finding.Level == worst.Finding.Level) : anew;
        var lesser = choice && last.Finding.Level != worst.Finding.Level;
        var often = counted.Count < 2 || stands
            ? $"{(stands ? "Read" : "At")} {facts.Time(worst.At)}"
            : $"{(limit ? $"Worst at {facts.Time(worst.At)}, " : "")}{counted.Count} times{(events > 1 ? $" in {events} excursions" : "")} from {facts.Time(counted[0].At)} to {facts.Time(counted[^1].At)}";
        var since = later switch
        {
            _ when stands => $"{(At(facts, last) is { } value ? $", {value}" : "")}.",
            null when last.At >= facts.Shift.Start => ".",
            null or [] when LaterThan(facts, last) is { } value => $"; read again {facts.Time(value.At)}, {value.Words}.",
            null => "; no later reading.",
            [] when lesser => $"; {At(facts, last)} at {facts.Time(last.At)}, no later reading.",
            [] => $"{(limit && last.At != worst.At && At(facts, last) is { } value ? $", {value} at {facts.Time(last.At)}" : "")}; no later reading.",
            _ => $"; from {facts.Time(later[0].At)} without this finding, {(above ? "now: see above" : $"{(later.Count > 1 ? "now " : "")}{later[^1].Words} at {facts.Time(later[^1].At)}")}.",
        };
        // Urgent once and to watch now: what it asked for then would mislead.
        var less = limit && !over && last.Finding.Level < worst.Finding.Level;
        var words = less || (limit && over) || (choice && (over || lesser)) ? FindingText.WithoutAsking(facts.Site, worst.Finding) : worst.Finding.Text;
        var hangsOn = facts.Doubted.See(worst.Seq, worst.Finding.Point);
        var answers = string.Concat(facts.Answers.Where(a => noticed.Exists(n => a.IsTo(n.Seq, n.Finding))).Select(a => " " + FirstLetter.Large(a.Words(facts.Site, facts.AsOf))));
        var wrong = Wrong(facts, worst);
        var level = $"{(less ? "WAS " : "")}{worst.Finding.Level.ToString().ToUpperInvariant()}{(less ? $", NOW {last.Finding.Level.ToString().ToUpperInvariant()}" : "")}: ";
        string Told(string text) => $"{level}{text} {often}{since}{wrong}{answers} {Say.Ref(noticed[0].Seq, worst.Seq, last.Seq)}";
        string Doubted(string said) => hangsOn is null ? said : $"{said.TrimEnd('.')} (doubted: see {Say.Visible(hangsOn)}).";
        var text = Told(Doubted(Say.Sentence(words)));
        return new Excursion(
            noticed[0].Finding.Point, worst.Finding.Level, noticed[0].At, text, over,
            $"{Value(Say.Visible(FindingText.InOne(facts.Site, worst.Finding)), limit)} at {facts.Time(worst.At)}{(limit && over ? above ? ", now: see above" : $", now {later![^1].Words}" : "")} {Say.Ref(worst.Seq)}")
        {
            Short = Told(Doubted(FindingText.InShort(worst.Finding))), HangsOn = hangsOn, Last = last.At, Plain = text[level.Length..], Code = noticed[0].Finding.Code,
            Seq = noticed[0].Seq, Place = LimitWords.Place(worst.Finding), Answers = answers,
        };
    }

    /// <summary>That its value was computed from one that was put right since; empty when it was not.</summary>
    private static string Wrong(ShiftFacts facts, Noticed worst) =>
        facts.Entries.FirstOrDefault(e => e.Record.Seq == worst.Seq) is { Record: { } record, Entry: var entry }
        && facts.PutRightLater.Of(record, entry).FirstOrDefault(r => r.Result.Equals(worst.Finding.Point, StringComparison.OrdinalIgnoreCase)) is { } wrong
            ? $" Computed from {PutRightLater.Words(wrong)}."
            : facts.PutRightLater.InTheRun(worst.Finding, worst.At, worst.Seq) is { } right ? $" One of them was put right since {Say.Ref(right)}." : "";

    /// <summary>Of a broken limit what stands before how far it was beyond.</summary>
    private static string Value(string words, bool limit) => limit && words.LastIndexOf(", ", StringComparison.Ordinal) is > 0 and var comma ? words[..comma] : words;

    /// <summary>Values of the point after its last finding; null when no values are known of it.</summary>
    private static IReadOnlyList<Seen>? Later(ShiftFacts facts, Noticed last) =>
        last.Finding.Point is { } tag && facts.Series.TryGetValue(tag, out var series) ? [.. series.Where(s => s.At > last.At)] : null;

    /// <summary>A newer value that does not lie in the shift: from before it, or entered for it later; null when there is none.</summary>
    private static Seen? LaterThan(ShiftFacts facts, Noticed last) =>
        last.Finding.Point is { } tag && facts.Site.FindPoint(tag) is { } point && facts.State.Latest.GetValueOrDefault(tag) is { Value: { } value } latest && latest.At > last.At
            ? new Seen(point, latest.At, value, 0, latest.Seq) : null;

    /// <summary>The value that was judged; null when none is known.</summary>
    private static string? At(ShiftFacts facts, Noticed noticed) =>
        noticed.Finding.Point is { } tag && facts.Series.TryGetValue(tag, out var series) ? series.LastOrDefault(s => s.At == noticed.At)?.Words : null;

    /// <summary>How far the reading was beyond its outermost limit; 0 when no limit tells.</summary>
    private static double Beyond(ShiftFacts facts, Noticed noticed)
    {
        if (noticed.Finding.Point is not { } tag || !facts.Series.TryGetValue(tag, out var series) || series.FirstOrDefault(s => s.At == noticed.At) is not { } seen)
        {
            return 0;
        }

        var limits = seen.Point.Limits;
        var above = seen.Value - (limits.WatchHigh ?? limits.UrgentHigh ?? double.PositiveInfinity);
        var below = (limits.WatchLow ?? limits.UrgentLow ?? double.NegativeInfinity) - seen.Value;
        return Math.Max(0, Math.Max(above, below));
    }

    private sealed record Noticed(DateTimeOffset At, long Seq, Finding Finding)
    {
        /// <summary>True where it only stands again, because the later value was taken back.</summary>
        public bool TakenBack { get; init; }
    }

    /// <summary>What makes one line.</summary>
    private sealed record Story(List<Noticed> Noticed, int Events);
}
