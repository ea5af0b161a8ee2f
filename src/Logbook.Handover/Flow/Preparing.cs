using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What the outgoing person gives to the note that built itself.</summary>
/// <param name="Declared">Hazard section to checked, not-checked or change (or 1, 2, 3), a change with what changed: <c>change:valve opened</c>.</param>
/// <param name="IfThen">At least one when a hazard is open.</param>
public sealed record PrepareRequest(
    string By, IReadOnlyDictionary<string, string> Declared, IReadOnlyList<string> IfThen, IReadOnlyList<string> Words)
{
    /// <summary>These lines are all: what was prepared before is dropped. Unless said its lines are kept, before these.</summary>
    public bool Anew { get; init; }

    /// <summary>What each section said when it was declared; null when they are declared now, with this request.</summary>
    public IReadOnlyDictionary<string, string>? Said { get; init; }

    /// <summary>The request with what its preparer had prepared before and did not drop, and those lines.</summary>
    internal (PrepareRequest Whole, IReadOnlyList<string> Kept) With(Prepared? before)
    {
        if (Anew || before is null || !Handed.Same(before.By, By))
        {
            return (this, []);
        }

        List<string> ifThen = [.. before.Lines.Take(before.IfThens).Except(IfThen.Select(l => l.Trim()), StringComparer.Ordinal)];
        List<string> words = [.. before.Lines.Skip(before.IfThens).Except(Words.Select(l => l.Trim()), StringComparer.Ordinal)];
        return (this with { IfThen = [.. ifThen, .. IfThen], Words = [.. words, .. Words] }, [.. ifThen, .. words]);
    }
}

/// <summary>The holder makes the note ready for whoever takes over.</summary>
public static class Preparing
{
    /// <exception cref="JournalException">The store could not save it; nothing was saved.</exception>
    public static Handed Prepare(Desk desk, SignWith sign, PrepareRequest request)
    {
        desk.Follow();
        var said = request.Said ?? HazardSections.Recorded(desk.Site, LastThatStands.In(desk, desk.State));
        var (whole, kept) = request.With(desk.State.Line.Prepared ?? desk.State.Line.Dropped);
        var handed = Handed.Step(
            desk, whole.By,
            () => Typed(desk, whole),
            () => WhyNot(desk.State.Line, desk.Site, whole.By),
            () =>
            {
                var (signed, refused) = Signing.Sign(desk, sign, whole.By, Signing.Prepared, other: null);
                desk.Follow(); // while the PIN was typed another terminal may have written
                return signed is null ? (null, refused) : Outdated(desk, whole, said) is { } outdated ? (null, outdated) : (Body(desk, whole, signed), null);
            });
        return handed.Record is null || kept.Count == 0 ? handed : handed with { Beside = $"kept of what was prepared before: {string.Join("; ", kept)}; --anew drops it" };
    }

    /// <summary>What this person prepared before and keeps, in its order; empty when nothing.</summary>
    public static IReadOnlyList<string> Kept(Desk desk, PrepareRequest request) => request.With(desk.State.Line.Prepared ?? desk.State.Line.Dropped).Kept;

    /// <summary>What was declared of a section does not go under what came there since.</summary>
    private static string? Outdated(Desk desk, PrepareRequest request, IReadOnlyDictionary<string, string> said) =>
        HazardSections.Outdated(request.Declared, said, HazardSections.Recorded(desk.Site, LastThatStands.In(desk, desk.State))) is { Count: > 0 } names
            ? $"not signed: a record came since that changes {string.Join(", ", names)}; look at it again and declare it anew" : null;

    private static IEnumerable<Mistake> Typed(Desk desk, PrepareRequest request) =>
    [
        .. HazardSections.Mistakes(request.Declared),
        .. request.IfThen.SelectMany(text => Given.Text(text, "an if-then line")),
        .. request.Words.SelectMany(text => Given.Text(text, "a line of own words")),
        .. request.IfThen.Count == 0 && Hazards.Of(desk.Site, desk.State, desk.Now).Count > 0
            ? [Mistake.Typed("something that can hurt is open, and nothing says what to do if it turns", "--if \"if ... then ...\"")]
            : Array.Empty<Mistake>(),
    ];

    private static string? WhyNot(LineHeld line, Site site, string by) =>
        line.Holder is not { } holder ? "NOBODY HOLDS THE LINE: there is nobody to prepare a handover; take it over with: handover accept --unattended REASON"
        : !Handed.Same(holder.Code, by) ? $"{Say.Person(site, holder.Code)} holds the line: only the holder prepares"
        : null;

    private static HandoverPrepared Body(Desk desk, PrepareRequest request, Signed signed)
    {
        var declared = HazardSections.Of(request.Declared);
        var changes = HazardSections.Changes(request.Declared);
        var note = Freezing.Of(HandoverNote.InHand(desk, new Declaration(declared, request.By, desk.Now) { Changes = changes }));
        return new HandoverPrepared(declared, Trimmed(request.IfThen), Trimmed(request.Words), note, Freezing.Hash(note), signed) { Changes = changes };
    }

    private static IReadOnlyList<string> Trimmed(IReadOnlyList<string> lines) => [.. lines.Select(l => l.Trim())];
}

/// <summary>What the outgoing person declared of the hazard sections, and when.</summary>
internal sealed record Declaration(IReadOnlyDictionary<string, string> Sections, string By, DateTimeOffset At)
{
    /// <summary>Its record; beyond every record while it is being signed.</summary>
    public long Seq { get; init; } = long.MaxValue;

    /// <summary>What changed, by section; null when nothing did, and in older records.</summary>
    public IReadOnlyDictionary<string, string>? Changes { get; init; }

    /// <summary>That of the prepared note; null while there is none.</summary>
    public static Declaration? Of(Desk desk) =>
        desk.State.Line.Prepared is { } prepared && desk.Store.Read(prepared.Seq).First() is { Body: HandoverPrepared body } record
            ? new Declaration(body.Declared, record.By, record.At) { Seq = record.Seq, Changes = body.Changes }
            : null;
}
