using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What is signed outside the handover: site files put in force, code let in, people counted out, and a hazard closed.</summary>
public static class SignedWriting
{
    /// <exception cref="JournalException">The store could not save it; nothing was saved.</exception>
    public static Handed Adopt(Desk desk, SignWith sign, string why, string by) => Handed.Step(
        desk, by,
        () => Writing.WhyNotAdopt(desk, why, by),
        () => Rights.WhyNot(desk),
        () => Sign(desk, sign, by, Signing.Adopted, signed => Writing.Adopted(desk, why) with { Signed = signed }));

    /// <summary>Trusts the site's own plug-in as its files are now.</summary>
    /// <param name="files">File inside the plug-in's folder to the SHA-256 of its content, in hex.</param>
    /// <exception cref="JournalException">The store could not save it; nothing was saved.</exception>
    public static Handed Trust(Desk desk, SignWith sign, string plugin, IReadOnlyDictionary<string, string> files, string why, string by) => Handed.Step(
        desk, by,
        () => Writing.WhyNotTrust(desk, why, by),
        () => Rights.WhyNot(desk),
        () => Sign(desk, sign, by, Signing.Trusted, signed => new PluginTrusted(plugin, files, why.Trim()) { Signed = signed }));

    /// <summary>Says how a carried item was found; a PIN is asked where people are counted out by another than the one whose count stands.</summary>
    /// <exception cref="JournalException">The store could not save it; nothing was saved.</exception>
    public static Handed Confirm(Desk desk, SignWith sign, CarryConfirmed look, string by) => Handed.Step(
        desk, by,
        () => Writing.WhyNotConfirm(desk, look, by),
        () => null,
        () => Writing.IsSigned(desk.State, look, by)
            ? Sign(desk, sign, by, Signing.CountedOut, signed => Writing.Trimmed(look) with { Signed = signed })
            : (Writing.Trimmed(look), null));

    /// <summary>Closes a carried item; a PIN is asked where it can hurt.</summary>
    /// <exception cref="JournalException">The store could not save it; nothing was saved.</exception>
    public static Handed Close(Desk desk, SignWith sign, CarryClosed closed, string by)
    {
        CarriedItem? item = null;
        var handed = Handed.Step(
            desk, by,
            () => Writing.WhyNotClose(desk, closed, by),
            () => StillInside(desk, closed.Id) ?? (desk.State.Carried.Find(c => c.Id == closed.Id) is { } closing ? LocksForPeople(desk.Site, desk.State.Carried, closing) : null),
            () => (item = desk.State.Carried.Find(c => c.Id == closed.Id)) is { IsHazard: true }
                ? Sign(desk, sign, by, Signing.Closed, signed => Writing.Trimmed(closed) with { Signed = signed })
                : (Writing.Trimmed(closed), null));
        return handed.Record is null || item is null ? handed : handed with { Beside = StillInAcid(desk, item) };
    }

    /// <summary>A wash that is closed takes no acid out of anything: what is still recorded as in acid there, by name.</summary>
    private static string? StillInAcid(Desk desk, CarriedItem item)
    {
        var area = desk.Site.FindEquipment(item.On)?.Area ?? item.On;
        var acid = desk.State.Equipment.Values.Where(e => e.State == "acid" && (desk.Site.FindEquipment(e.Equipment)?.Area ?? "") == area).OrderBy(e => e.Since).ToList();
        return item.ItemKind != "wash" || acid.Count == 0 ? null
            : $"STILL RECORDED AS IN ACID: {string.Join(", ", acid.Select(e => $"{Say.Equipment(desk.Site, e.Equipment)} since {Say.Time(desk.Site, e.Since, desk.Now)} {Say.Ref(e.Seq)}"))}; once it is rinsed say of {Say.Visible(acid[0].Equipment)} that it is running, or what it does then";
    }

    /// <summary>A permit ends when the last count of people inside is none: closing it would take them off every page.</summary>
    private static string? StillInside(Desk desk, long id) => desk.State.Carried.Find(c => c.Id == id) is { } item && CountedInside(item) is { } inside
        ? $"permit {id}, {Say.Equipment(desk.Site, item.On)}: {Say.Visible(inside)} counted inside; it is closed when everybody is out: count with the attendant, then carry confirm {id} --set inside=0"
        : null;

    /// <returns>The last count of people inside while a permit cannot be closed for it; null when it can.</returns>
    public static string? CountedInside(CarriedItem item) =>
        item.ItemKind == "permit" && item.Fields.TryGetValue("inside", out var inside) && CarriedItem.CountIn(inside) is not 0 ? inside : null;

    /// <summary>
    /// An isolation under a permit is not closed while people are inside, or may be since nobody counted, or while work goes on under
    /// one that lets nobody in: one line that says so; null when it can be.
    /// </summary>
    public static string? LocksForPeople(Site site, IReadOnlyList<CarriedItem> carried, CarriedItem item) =>
        carried.FirstOrDefault(permit => permit.StandsOn(item) && (permit.MayBeInside || permit is { LetsNobodyIn: true } && !permit.Fields.ContainsKey("inside"))) is not { } open ? null
        : open.MayBeInside
            ? $"{(CountedInside(open) is { } inside ? $"{Say.Visible(inside)} counted inside" : "nobody has counted who is inside")} under {Named(site, open)}: isolation {item.Id}, {Say.Equipment(site, item.On)}, is closed when everybody is out; count with the attendant, then carry confirm {open.Id} --set inside=0"
            : $"{Named(site, open)}, is open and stands on isolation {item.Id}, {Say.Equipment(site, item.On)}: close the permit first, when its work is done and everybody is clear";

    /// <summary>What to think of before an isolation is closed under a permit that is still open; null when none is.</summary>
    public static string? PermitStands(Site site, IReadOnlyList<CarriedItem> carried, CarriedItem item) =>
        carried.FirstOrDefault(permit => permit.StandsOn(item)) is { } open
            ? $"{Named(site, open)}, is STILL OPEN and stands on this lockout: close the permit first, or be sure with the attendant that nobody goes in"
            : null;

    private static string Named(Site site, CarriedItem permit) => $"permit {Say.Visible(permit.Fields.GetValueOrDefault("number", ""))}, {Say.Equipment(site, permit.On)} {Say.Ref(permit.Id)}";

    private static (RecordBody? Body, string? Refused) Sign(Desk desk, SignWith sign, string by, string means, Func<Signed, RecordBody> body)
    {
        var (signed, refused) = Signing.Sign(desk, sign, by, means, other: null);
        return signed is null ? (null, refused) : (body(signed), null);
    }
}
