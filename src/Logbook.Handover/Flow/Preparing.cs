using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What the outgoing person gives to the note that built itself.</summary>
/// <param name="Declared">Hazard section to checked, not-checked or change (or 1, 2, 3).</param>
/// <param name="IfThen">At least one when a hazard is open.</param>
public sealed record PrepareRequest(
    string By, IReadOnlyDictionary<string, string> Declared, IReadOnlyList<string> IfThen, IReadOnlyList<string> Words);

/// <summary>The holder makes the note ready for whoever takes over.</summary>
public static class Preparing
{
    /// <exception cref="JournalException">The store could not save it; nothing was saved.</exception>
    public static Handed Prepare(Desk desk, SignWith sign, PrepareRequest request) => Handed.Step(
        desk, request.By,
        () => Typed(desk, request),
        () => WhyNot(desk.State.Line, desk.Site, request.By),
        () =>
        {
            var (signed, refused) = Signing.Sign(desk, sign, request.By, Signing.Prepared, other: null);
            return signed is null ? (null, refused) : (Body(desk, request, signed), null);
        });

    private static IEnumerable<Mistake> Typed(Desk desk, PrepareRequest request) =>
    [
        .. HazardSections.Mistakes(request.Declared),
        .. request.IfThen.SelectMany(text => Given.Text(text, "an if-then line")),
        .. request.Words.SelectMany(text => Given.Text(text, "a line of own words")),
        .. request.IfThen.Count == 0 && Hazards.Of(desk.Site, desk.State, desk.Now).Count > 0
            ? [Mistake.Typed("something that can hurt is open, and nothing says what to do if it turns", "--if \"if ... then ...\"")]
            : Array.Empty<Mistake>(),
        .. request.Words.Count == 0 && request.Declared.Values.Any(v => v is "3" || Handed.Same(v, "change"))
            ? [Mistake.Typed("a section is declared as changed, and nothing says how", "--word TEXT")]
            : Array.Empty<Mistake>(),
    ];

    private static string? WhyNot(LineHeld line, Site site, string by) =>
        line.Holder is not { } holder ? "NOBODY HOLDS THE LINE: there is nobody to prepare a handover; take it over with: handover accept --unattended REASON"
        : !Handed.Same(holder.Code, by) ? $"{Say.Person(site, holder.Code)} holds the line: only the holder prepares"
        : null;

    private static HandoverPrepared Body(Desk desk, PrepareRequest request, Signed signed)
    {
        var declared = HazardSections.Of(request.Declared);
        var note = Freezing.Of(HandoverNote.InHand(desk, new Declaration(declared, request.By, desk.Now)));
        return new HandoverPrepared(declared, Trimmed(request.IfThen), Trimmed(request.Words), note, Freezing.Hash(note), signed);
    }

    private static IReadOnlyList<string> Trimmed(IReadOnlyList<string> lines) => [.. lines.Select(l => l.Trim())];
}

/// <summary>What the outgoing person declared of the hazard sections, and when.</summary>
internal sealed record Declaration(IReadOnlyDictionary<string, string> Sections, string By, DateTimeOffset At)
{
    /// <summary>Its record; beyond every record while it is being signed.</summary>
    public long Seq { get; init; } = long.MaxValue;

    /// <summary>That of the prepared note; null while there is none.</summary>
    public static Declaration? Of(Desk desk) =>
        desk.State.Line.Prepared is { } prepared && desk.Store.Read(prepared.Seq).First() is { Body: HandoverPrepared body } record
            ? new Declaration(body.Declared, record.By, record.At) { Seq = record.Seq }
            : null;
}
