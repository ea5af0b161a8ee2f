using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Logbook.Plant;

namespace Logbook.Journal;

/// <summary>
/// What follows from the journal up to <see cref="Head"/>: a bounded fold, moved forward by one record at a time. Replay
/// uses stored results; it never computes them again.
/// </summary>
public sealed record State
{
    public static readonly State Empty = new();

    public Head Head { get; init; } = Head.Empty;

    /// <summary>The latest time at which any record up to <see cref="Head"/> was typed.</summary>
    public DateTimeOffset LatestEntered { get; init; } = DateTimeOffset.MinValue;

    /// <summary>The site in force; null until the first <c>site</c> record, and when today's program cannot read that record's files.</summary>
    [JsonIgnore] // follows from the files
    public Site? Site { get; init; }

    /// <summary>The files behind <see cref="Site"/>.</summary>
    public SiteFiles? Files { get; init; }

    /// <summary>Every record that put files in force, oldest first.</summary>
    public ImmutableList<Adoption> Adopted { get; init; } = [];

    /// <summary>
    /// Tag to its newest value (by reading time, then sequence), read and derived. A reading that was not taken leaves the
    /// value before it standing; a value is null only when a correction took it back.
    /// </summary>
    public ImmutableDictionary<string, SeriesValue> Latest { get; init; } =
        ImmutableDictionary.Create<string, SeriesValue>(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Tag to the findings of its newest judgement; a later reading without findings clears them. Under the empty tag stand
    /// the newest entry's findings that name no point.
    /// </summary>
    public ImmutableDictionary<string, ImmutableList<OpenFinding>> Findings { get; init; } =
        ImmutableDictionary.Create<string, ImmutableList<OpenFinding>>(StringComparer.OrdinalIgnoreCase);

    /// <summary>Equipment code to what it does.</summary>
    public ImmutableDictionary<string, EquipmentStatus> Equipment { get; init; } =
        ImmutableDictionary.Create<string, EquipmentStatus>(StringComparer.OrdinalIgnoreCase);

    /// <summary>What is open, oldest first.</summary>
    public ImmutableList<CarriedItem> Carried { get; init; } = [];

    /// <summary>Who holds the line and how far its handover has come.</summary>
    public LineHeld Line { get; init; } = LineHeld.ByNobody;

    /// <summary>Code to what the journal knows of the person.</summary>
    public ImmutableDictionary<string, Standing> People { get; init; } =
        ImmutableDictionary.Create<string, Standing>(StringComparer.OrdinalIgnoreCase);

    /// <summary>True when the person writes no more.</summary>
    public bool IsClosed(string code) => People.TryGetValue(code, out var standing) && standing.Closed;

    /// <summary>Standing orders, oldest first, and for two weeks those that were withdrawn; what has ended goes when the next order comes.</summary>
    public ImmutableList<StandingOrder> Orders { get; init; } = [];

    /// <summary>Notes to other departments that wait for their acknowledgement, oldest first.</summary>
    public ImmutableList<OpenDepartmentNote> Departments { get; init; } = [];

    /// <summary>The upset that lasts; null when none is declared.</summary>
    public Upset? Upset { get; init; }

    /// <summary>Swaps, holdovers and holidays of the last two months, as they were entered.</summary>
    public ImmutableList<RosterChange> Roster { get; init; } = [];

    /// <summary>Jumps of the clock that nobody has acknowledged.</summary>
    public ImmutableList<OpenClockJump> ClockJumps { get; init; } = [];

    /// <summary>Urgent findings without an answer (cause, and who was told), whether they still stand or not.</summary>
    public ImmutableList<OpenFinding> Unanswered { get; init; } = [];

    /// <summary>The record by which entries are cross-examined; null until one is adopted.</summary>
    public long? Fit { get; init; }

    /// <summary>What the clock showed when the last record was typed; null before the first.</summary>
    public DateTimeOffset? LastEntered { get; init; }

    /// <summary>Since when the site in force rules; null until the first <c>site</c> record.</summary>
    public DateTimeOffset? SiteSince => Adopted.IsEmpty ? null : Adopted[^1].At;

    /// <summary>What a piece of equipment does; running when nobody has said otherwise.</summary>
    public string StateOf(string? equipment) =>
        equipment is not null && Equipment.TryGetValue(equipment, out var status) ? status.State : "running";

    /// <summary>The state after one more record.</summary>
    public State Apply(JournalRecord record)
    {
        var next = record.Body switch
        {
            SiteAdopted adopted => (this with { Adopted = Adopted.Add(new(record.Seq, record.At)) }).WithFiles(new(adopted.Files)),
            Entry entry => this.AfterEntry(record, entry).AfterOpening(record, entry),
            Correction correction => this.AfterCorrection(record, correction).AfterReopening(record, correction),
            EquipmentStateChanged c => this with
            {
                Equipment = Equipment.SetItem(c.Equipment, After(Equipment.GetValueOrDefault(c.Equipment), new(c.Equipment, c.State, c.Since, c.Why, record.Seq, record.By))),
            },
            Carry c => (this with
            {
                Carried = Carried.Add(CarriedItem.Opened(record, c)),
            }).AfterNaming(record, record.Seq, c.Fields),
            CarryClosed closed => this.AfterClosing(record, closed),
            CarryConfirmed look => this.AfterConfirmation(record, look).AfterNaming(record, look.Id, look.Fields),
            OrderGiven order => this.AfterOrder(record, order),
            OrderSeen seen => this.AfterOrderSeen(record, seen),
            OrderWithdrawn withdrawn => this.AfterOrderWithdrawn(record, withdrawn),
            DepartmentNote note => this.AfterDepartment(record, note),
            UpsetDeclared upset => this with
            {
                Upset = upset.Ended is null ? new Upset(record.Seq, upset.Began, null, upset.Why, record.By) : null,
            },
            RosterChange change => this.AfterRoster(record, change),
            ClockJumped clock => this.AfterClock(record, clock),
            FindingAnswered answer => this.AfterAnswer(record, answer),
            FitAdopted => this with { Fit = record.Seq },
            _ => this,
        };
        return next with { Head = Head.Of(record), Line = next.Line.After(record), People = Standing.After(People, record), LastEntered = record.Entered, LatestEntered = record.Entered > LatestEntered ? record.Entered : LatestEntered };
    }

    /// <summary>Acid that is told once more did not go in anew: since when it is in stays, and why.</summary>
    private static EquipmentStatus After(EquipmentStatus? before, EquipmentStatus told) => before is { State: "acid" } && told.State == "acid"
        ? told with { Since = before.Since < told.Since ? before.Since : told.Since, Why = told.Why ?? before.Why }
        : told;

    internal State WithFiles(SiteFiles files)
    {
        var site = SiteReader.Read(files);
        return this with { Files = files, Site = site.Ok ? site.Value : null };
    }
}

/// <summary>A record that put the site's files in force.</summary>
public sealed record Adoption(long Seq, DateTimeOffset At);

/// <summary>A finding that still stands. Its id for people is <c>SEQ.N</c>.</summary>
public sealed record OpenFinding(long Seq, int Number, DateTimeOffset At, Finding Finding)
{
    /// <summary>What was done about it; null while nobody has said.</summary>
    public FindingAnswer? Answer { get; init; }

    /// <summary>The entry that it is of, where a correction of that entry found it; null when the entry itself did.</summary>
    public long? Corrects { get; init; }

    /// <summary>True when it is a finding of that entry, as it was typed or as it was corrected.</summary>
    public bool IsOf(long entry) => Seq == entry || Corrects == entry;

    /// <summary>A record's findings, numbered from 1 as they stand in it.</summary>
    /// <param name="corrects">The entry, where the record corrects one.</param>
    public static IReadOnlyList<OpenFinding> Numbered(long seq, DateTimeOffset at, IReadOnlyList<Finding> findings, long? corrects = null) =>
        [.. findings.Select((finding, index) => new OpenFinding(seq, index + 1, at, finding) { Corrects = corrects })];
}

/// <summary>What was done about a finding.</summary>
public sealed record FindingAnswer(long Seq, string By, string Text);

public sealed record EquipmentStatus(string Equipment, string State, DateTimeOffset Since, string? Why, long Seq, string By);
