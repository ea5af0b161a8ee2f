using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What was written after the note was prepared. It needs no second PIN; what can hurt must be seen before the line is taken over.</summary>
internal static class SincePrepared
{
    /// <summary>Records after <paramref name="seq"/> that can hurt.</summary>
    public static IEnumerable<JournalRecord> Hurting(Desk desk, long seq) => desk.Store.Read(seq + 1).Where(r => CanHurt(desk, r));

    /// <summary>Lines for the records since the note was prepared: those that can hurt, or the others.</summary>
    public static IEnumerable<NoteLine> Lines(Desk desk, bool hurting) => Records(desk).Where(r => CanHurt(desk, r) == hurting).Select(r => Line(desk, r));

    /// <summary>The whole section, what can hurt first; empty while nothing is prepared.</summary>
    public static IEnumerable<NoteSection> Section(Desk desk) => desk.State.Line.Prepared is null
        ? []
        : [Section(desk, "since-prepared", "SINCE PREPARED", [.. Lines(desk, hurting: true), .. Lines(desk, hurting: false)])];

    /// <summary>The lines of the page are as things stand now: what came since is in them too, and was not when the giver signed.</summary>
    public static NoteSection Section(Desk desk, string id, string title, IReadOnlyList<NoteLine> lines) => NoteSection.Of(id, title, lines) with
    {
        Beside = lines.Count > 0 && desk.State.Line.Prepared is { } prepared ? $"typed after {Say.Time(desk.Site, prepared.At, desk.Now)}; the lines above have it in them" : "",
    };

    /// <summary>True for the steps of the handover itself, which stand elsewhere.</summary>
    public static bool IsStep(RecordBody body) => body.Kind.StartsWith("handover-", StringComparison.Ordinal) || body is PersonChanged;

    /// <summary>Who has read an order stands beside the order.</summary>
    private static IEnumerable<JournalRecord> Records(Desk desk) => desk.State.Line.Prepared is { } prepared
        ? desk.Store.Read(prepared.Seq + 1).Where(r => !IsStep(r.Body) && r.Body is not OrderSeen)
        : [];

    private static readonly TimeSpan TypedAtOnce = TimeSpan.FromMinutes(5);

    private static NoteLine Line(Desk desk, JournalRecord record) => new(
        Say.Time(desk.Site, record.Entered, desk.Now),
        $"{(CanHurt(desk, record) ? "CAN HURT: " : "")}{(record.Entered - record.At > TypedAtOnce ? $"of {Say.Time(desk.Site, record.At, desk.Now)}, typed since: " : "")}{LogLine.Of(desk, record).Words}. {Say.Person(desk.Site, record.By)} {Say.Ref(record.Seq)}");

    /// <summary>A hazard opened or closed or changed (what was locked may be started again), an upset, acid, what contradicts a hazard, an urgent finding, gas from its watch limit on, words of an injury.</summary>
    private static bool CanHurt(Desk desk, JournalRecord record) => record.Body switch
    {
        Carry carry => CarriedItem.CanHurt(carry.ItemKind, carry.Text, carry.Fields),
        CarryClosed closed => WasHazard(desk, closed.Id),
        CarryConfirmed look => (look.Changed is not null || look.Fields.Count > 0 || look.Lock is not null || look.Owner is not null) && WasHazard(desk, look.Id),
        UpsetDeclared upset => upset.Ended is null,
        EquipmentStateChanged change => change.State is "acid" || Contradicts(desk, record.Seq),
        Entry entry => Hurts(desk, entry.Findings) || InjuryWords.TellsOfInjury(record),
        Correction correction => Hurts(desk, correction.Findings),
        _ when InjuryWords.TellsOfInjury(record) => true,
        UnknownBody => true, // what cannot be read cannot be called harmless
        _ => false,
    };

    private static bool Contradicts(Desk desk, long seq) =>
        desk.State.Carried.Exists(item => YetRecorded.Each(desk.Site, desk.State.Equipment, desk.State.Carried, item).Any(c => c.Seq == seq));

    private static bool WasHazard(Desk desk, long item) =>
        desk.State.Carried.Find(c => c.Id == item) is { IsHazard: true }
        || (desk.Store.Read(item).FirstOrDefault()?.Body is Carry carry && CarriedItem.CanHurt(carry.ItemKind, carry.Text, carry.Fields));

    private static bool Hurts(Desk desk, IReadOnlyList<Finding> findings) => findings.Any(f =>
        f.Level == Level.Urgent || (f.Point is { } tag && desk.Site.FindPoint(tag) is { } point && Hazards.WordOf(point, f) is not null));
}
