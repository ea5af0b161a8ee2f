using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What the sections of a note are drawn from, read once.</summary>
/// <param name="AsOf">Up to when the note tells: now, or the shift's end.</param>
/// <param name="State">What stood at <paramref name="AsOf"/>.</param>
/// <param name="Records">The records of the shift, and what later ones changed about them.</param>
/// <param name="Entries">The entries of the shift, corrections applied.</param>
/// <param name="Series">Tag to its values in the shift, by reading time.</param>
internal sealed record ShiftFacts(
    Desk Desk, Site Site, ShiftInstance Shift, ShiftInstance Next, DateTimeOffset AsOf, State State, IReadOnlyList<JournalRecord> Records,
    IReadOnlyList<(JournalRecord Record, Entry Entry)> Entries, IReadOnlyDictionary<string, IReadOnlyList<Seen>> Series)
{
    private IReadOnlyList<DueCheck>? _checks;
    private Doubted? _doubted;
    private IReadOnlyList<Excursion>? _excursions;
    private IReadOnlyList<Answered>? _answers;
    private EquipmentHistory? _equipment;
    private IReadOnlyList<HazardLine>? _hazards;
    private PutRightLater? _putRightLater;

    /// <summary>The checks of the shift; read when somebody asks, because most pages do not.</summary>
    public IReadOnlyList<DueCheck> Checks => _checks ??= DueList.Between(Desk, Shift.Start, Shift.End);

    /// <summary>Values of the shift that hang on a reading that does not fit; looked up when somebody asks.</summary>
    public Doubted Doubted => _doubted ??= new Doubted(this);

    /// <summary>What left its limits in the shift, or stands since before it; worked out when somebody asks.</summary>
    public IReadOnlyList<Excursion> Excursions => _excursions ??= Excursion.Of(this);

    /// <summary>Which results of the shift rest on a value that was put right since; looked up when somebody asks.</summary>
    public PutRightLater PutRightLater => _putRightLater ??= new PutRightLater(Desk);

    /// <summary>What was done about findings; looked up when somebody asks.</summary>
    public IReadOnlyList<Answered> Answers => _answers ??= Answered.Of(Desk, State, Records);

    /// <summary>What can hurt at <see cref="AsOf"/>; put together when somebody asks.</summary>
    public IReadOnlyList<HazardLine> Hazards => _hazards ??= RemarkedOn.Beside(Desk, Site, State, AsOf, Handover.Hazards.Of(Site, State, AsOf, InsteadOfTrips.NotOnTime(Desk, State, Shift, Checks), GasBegun.Of(Desk, Site, State)));

    /// <summary>What the equipment did in the shift; read when somebody asks.</summary>
    public EquipmentHistory Equipment => _equipment ??= EquipmentHistory.Of(Desk, Records, Shift.Start);

    /// <summary>What the holder declared of the hazard sections; null before that.</summary>
    public Declaration? Declared { get; init; }

    /// <summary>The facts of the shift that covers <paramref name="at"/>, up to its end.</summary>
    public static ShiftFacts Of(Desk desk, DateTimeOffset at)
    {
        var site = SiteInForce.At(desk, at);
        return Of(desk, site, Calendar.ShiftAt(site, at));
    }

    /// <summary>The facts of a shift whose handover is in hand: up to now, also when its end has passed.</summary>
    public static ShiftFacts InHand(Desk desk) =>
        ShiftInHand.Of(desk) is var shift && shift.End < desk.Now ? Of(desk, desk.Site, shift with { End = desk.Now }) : Of(desk, desk.Site, shift);

    /// <summary>The facts of a stretch of whole shifts, as of one long shift that has the id of the last.</summary>
    public static ShiftFacts Over(Desk desk, Site site, DateTimeOffset from, ShiftInstance last) => Of(desk, site, last with { Start = from });

    private static ShiftFacts Of(Desk desk, Site site, ShiftInstance shift)
    {
        var asOf = desk.Now < shift.End ? desk.Now : shift.End;
        var records = JournalSpan.Touching(desk, shift.Start, shift.End);
        var entries = Corrected.Entries(records).ToList();
        return new ShiftFacts(
            desk, site, shift, Calendar.ShiftAt(site, shift.End), asOf, LastThatStands.In(desk, JournalSpan.StateAt(desk, asOf)), [.. records.Where(r => In(shift, r.At))],
            [.. entries.Where(e => In(shift, e.Record.At))], Seen.Of(site, entries, shift));
    }

    /// <summary>The time as it is said in this note.</summary>
    public string Time(DateTimeOffset at) => Say.Time(Site, at, AsOf);

    private static bool In(ShiftInstance shift, DateTimeOffset at) => at >= shift.Start && at < shift.End;
}

/// <summary>One value of a point, read or derived, as the note sees it.</summary>
/// <param name="U">Standard uncertainty; 0 when nothing is known of it.</param>
internal sealed record Seen(Point Point, DateTimeOffset At, double Value, double U, long Seq)
{
    public string Words => Say.Value(Point, Value, Point.Unit.Name);

    public static IReadOnlyDictionary<string, IReadOnlyList<Seen>> Of(Site site, IEnumerable<(JournalRecord Record, Entry Entry)> entries, ShiftInstance shift) =>
        entries.SelectMany(e => Values(site, e.Record, e.Entry)).Where(s => s.At >= shift.Start && s.At < shift.End)
            .GroupBy(s => s.Point.Tag, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(g => g.Key, g => (IReadOnlyList<Seen>)[.. g.OrderBy(s => s.At).ThenBy(s => s.Seq)], StringComparer.OrdinalIgnoreCase);

    private static IEnumerable<Seen> Values(Site site, JournalRecord record, Entry entry)
    {
        foreach (var reading in entry.Readings)
        {
            if (reading.Value is { } value && site.FindPoint(reading.Point) is { } point)
            {
                yield return new Seen(point, reading.At, value, point.U?.Of(value) ?? 0, record.Seq);
            }
        }

        foreach (var result in entry.Results)
        {
            if (result.Point is { } tag && site.FindPoint(tag) is { } point)
            {
                yield return new Seen(point, record.At, result.Value, result.U ?? 0, record.Seq);
            }
        }
    }
}
