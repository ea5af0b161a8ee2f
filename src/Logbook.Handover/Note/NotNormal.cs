using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>
/// What is different, what lasts before what is over, but for what was urgent in the last two hours, and urgent before to watch: upsets, findings of the shift, how the line
/// changed hands, equipment that does not run, temporary changes, corrected readings.
/// </summary>
internal static class NotNormal
{
    public static NoteSection Of(ShiftFacts facts) => Of(facts, InShort(facts), e => e.Brief, _ => true, onPage: false);

    /// <summary>The same for the page that is read before the line is taken: what is out stands under what can hurt.</summary>
    public static NoteSection OnPage(ShiftFacts facts)
    {
        var above = facts.State.Carried.Where(i => i.ItemKind == "safety-equipment").Select(i => i.On).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Of(facts, InShort(facts), e => ByTag(facts, e), e => !above.Contains(e.Equipment), onPage: true);
    }

    /// <summary>Of a doubt what does not fit and what would tell, with what hangs on it in its line while it lasts: its evidence stands in the record that it names.</summary>
    private static List<Excursion> InShort(ShiftFacts facts)
    {
        var all = WithComputed(facts, [.. Excursions(facts)]);
        var hanging = all.Where(e => e.Worst != Level.Urgent && e.HangsOn is { } on && all.Exists(d => !d.Over && d.Worst != Level.Urgent && d.Point == on)).ToLookup(e => e.HangsOn!, StringComparer.OrdinalIgnoreCase);
        return [.. all.Where(e => e.Worst == Level.Urgent || e.HangsOn is null || !hanging.Contains(e.HangsOn)).Select(e => e.Worst == Level.Urgent ? e : e with
        {
            Text = e.Short + (e.Point is { } tag && hanging.Contains(tag) ? $" On it hang, beyond their limits: {string.Join("; ", hanging[tag].Select(h => ByTag(facts, h)))}." : ""),
        })];
    }

    /// <summary>What is urgent because one reading of its entry was is said in the line of that reading, unless it can hurt sooner than that.</summary>
    private static List<Excursion> WithComputed(ShiftFacts facts, List<Excursion> all)
    {
        var links = new Plant.Links(facts.Site);
        Excursion? From(Excursion made) => made is not { Worst: Level.Urgent, Point: { } tag } ? null : all.Find(e =>
            e.Worst == Level.Urgent && e.Over == made.Over && e.Seq == made.Seq && e.Place <= made.Place && e.Point is { } read && links.Makes(read, tag));
        var computed = all.Where(e => From(e) is not null).ToLookup(e => From(e)!);
        return [.. all.Where(e => From(e) is null).Select(e => !computed.Contains(e) ? e : e with
        {
            Text = $"{e.Text} With it: {string.Join("; ", computed[e].Select(c => c.Brief + (c.Answers == e.Answers ? "" : c.Answers)))}",
        })];
    }

    /// <summary>A point by its tag alone: its name often has that behind it already.</summary>
    private static string ByTag(ShiftFacts facts, Excursion e) => e.Point is { } tag && facts.Site.FindPoint(tag) is { } point
        ? e.Brief.Replace($"{point.Description} ({tag})", point.Description, StringComparison.OrdinalIgnoreCase).Replace(point.Description, Say.Visible(tag), StringComparison.Ordinal)
        : e.Brief;

    private static NoteSection Of(ShiftFacts facts, List<Excursion> told, Func<Excursion, string> brief, Func<EquipmentStatus, bool> standing, bool onPage)
    {
        IEnumerable<NoteLine> Told(bool over, bool urgent) => Lines(told.Where(e => e.Over == over && (e.Worst == Level.Urgent) == urgent && !JustOver(e)));
        bool JustOver(Excursion e) => e is { Over: true, Worst: Level.Urgent } && facts.AsOf - e.Last <= TakeLonger.Recent;
        return NoteSection.Of(
            "not-normal",
            "NOT NORMAL",
            [
                .. Upsets(facts), .. Told(over: false, urgent: true), .. Lines(told.Where(JustOver).OrderBy(e => e.Place).ThenByDescending(e => e.Last)), .. Reliefs(facts), .. Standing(facts, standing), .. Told(over: false, urgent: false),
                .. Told(over: true, urgent: true), .. WatchedAndOver(told, brief), .. Temporary(facts, brief: onPage), .. Corrections(facts),
            ]);
    }

    /// <summary>Upsets of the shift, over or not: what went on while rounds were not walked.</summary>
    public static IEnumerable<NoteLine> Upsets(ShiftFacts facts) =>
        from upset in UpsetThen.Of(facts.Desk, facts.State, facts.Records)
        orderby upset.Began
        let said = new[] { upset.Begun, upset.Ended }.OfType<JournalRecord>().DistinctBy(r => r.Seq).ToList()
        select new NoteLine(
            "upset",
            $"{(upset.End is { } end ? $"from {facts.Time(upset.Began)} to {facts.Time(end)}" : $"since {facts.Time(upset.Began)}, NOT OVER")}"
            + $"{string.Concat(upset.Words.Select(w => $"; {Say.Visible(w)}"))}. {string.Join(", ", said.Select(r => Say.Person(facts.Site, r.By)).Distinct(StringComparer.Ordinal))} {Say.Ref(said.Select(r => r.Seq))}");

    /// <summary>What left its limits, but for what stands under what can hurt.</summary>
    public static IEnumerable<Excursion> Excursions(ShiftFacts facts) => facts.Excursions.Where(e => !StandsAbove(facts, e) && OverHazards.WordOf(facts, e) is null && !IsJumpOf(facts, e));

    /// <summary>How far a gas jumped says nothing beside the limit that it broke by that.</summary>
    private static bool IsJumpOf(ShiftFacts facts, Excursion jump) => jump is { Code: "step", Point: { } tag } && facts.Site.FindPoint(tag)?.Unit.Name == "ppm"
        && facts.Excursions.Any(e => e.Point == tag && e.Code.StartsWith("limit.", StringComparison.Ordinal) && e.First <= jump.First && jump.First <= e.Last);

    public static IEnumerable<NoteLine> Lines(IEnumerable<Excursion> excursions) => excursions.Select(e => new NoteLine(Say.Visible(e.Point ?? "line"), e.Text));

    /// <summary>What was only to watch and is over, in one line, so that a bad night stays a page.</summary>
    private static IEnumerable<NoteLine> WatchedAndOver(List<Excursion> told, Func<Excursion, string> brief)
    {
        var over = told.FindAll(e => e.Over && e.Worst != Level.Urgent);
        return over.Count < 2 ? Lines(over)
            : [new NoteLine("over", $"WATCH, each at its worst and without the finding since: {string.Join("; ", over.Select(brief))}")];
    }

    /// <summary>A finding that stands under what can hurt is not said twice.</summary>
    private static bool StandsAbove(ShiftFacts facts, Excursion excursion) =>
        excursion.Point is { } tag && facts.Site.FindPoint(tag) is { } point
        && facts.State.Findings.GetValueOrDefault(tag) is { } open && open.Exists(f => Hazards.WordOf(point, f.Finding) is not null);

    /// <summary>Items that tell what is different now, not what remains to be done.</summary>
    public static bool IsTemporary(CarriedItem item) => item.ItemKind is "temporary-change" or "out-of-service";

    /// <summary>Equipment that does not run, by name; what stands for one reason since one moment is one line.</summary>
    private static IEnumerable<NoteLine> Standing(ShiftFacts facts, Func<EquipmentStatus, bool> told) =>
        from change in facts.State.Equipment.Values.Where(e => e.State is not "running" and not "acid" && told(e)).OrderBy(e => e.Since).ThenBy(e => e.Seq)
        group change by (change.State, Since: facts.Time(change.Since), Why: change.Why?.Trim(), change.By) into same
        select new NoteLine(
            Say.Visible(same.Key.State),
            $"{string.Join(", ", same.Select(e => Say.Equipment(facts.Site, e.Equipment)))} since {same.Key.Since}{(string.IsNullOrEmpty(same.Key.Why) ? "" : ", " + Say.Visible(same.Key.Why))}. "
            + $"{Say.Person(facts.Site, same.Key.By)} {Say.Ref(same.Select(e => e.Seq))}");

    /// <summary>How the line changed hands, where it was not by a handover and does not stand above as an injury.</summary>
    private static IEnumerable<NoteLine> Reliefs(ShiftFacts facts) =>
        facts.Records.Where(r => r.Body is HandoverRelief { Mode: not "short" } && !InjuryWords.TellsOfInjury(r))
            .Select(r => new NoteLine("the line", $"{StepWords.Of(facts.Site, r)}. {Say.Person(facts.Site, r.By)} {facts.Time(r.At)} {Say.Ref(r.Seq)}"));

    private static IEnumerable<NoteLine> Temporary(ShiftFacts facts, bool brief) =>
        facts.State.Carried.Where(IsTemporary).Select(i => StillOpen.Line(facts, i, brief));

    /// <summary>Each of its readings stands above as what it was, since it was urgent.</summary>
    private static bool ToldAbove(ShiftFacts facts, long seq, Correction correction) => correction.Readings.All(r =>
        facts.State.Findings.GetValueOrDefault(r.Point, []).Exists(f => f.Seq == seq && UrgentBefore.Is(f.Finding)));

    private static IEnumerable<NoteLine> Corrections(ShiftFacts facts) =>
        facts.Records.Where(r => r.Body is Correction correction && !ToldAbove(facts, r.Seq, correction)).Select(r => new NoteLine(
            "corrected",
            $"{LogLine.Of(facts.Desk, r).Words}. {Say.Person(facts.Site, r.By)} {facts.Time(r.At)} {Say.Ref(r.Seq)}"));
}
