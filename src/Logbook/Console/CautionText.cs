using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook;

/// <summary>The site's cautions for what was just opened or worked on, on the error stream so that they never mix with an answer.</summary>
internal static class CautionText
{
    /// <summary>For equipment that changes its state, or an item that is opened: what the state or the kind asks for, and the place.</summary>
    public static void Opened(Shell shell, Site site, string trigger, string on)
    {
        Print(shell, site, Caution.Of(site, trigger, on));
        // A site's own cautions may be older than this kind.
        if (trigger == "carry:injury" && !site.Cautions.Any(c => c.Triggers.Contains(trigger, StringComparer.OrdinalIgnoreCase)))
        {
            shell.Error.WriteLine($"CAUTION {InjuryWords.FirstAid}");
        }
    }

    /// <summary>For the samples that an entry's readings are of: whoever titrates has its poisons on the bench.</summary>
    public static void WorkedOn(Shell shell, Site site, Entry entry) =>
        Print(shell, site, [.. entry.Readings.Where(r => !r.NotTaken).Select(r => site.FindPoint(r.Point)?.Sample).OfType<string>().Distinct(StringComparer.Ordinal).Select(s => "sample:" + s)]);

    /// <summary>For an item or a state that was just recorded, when the log now says two things of the equipment that cannot both be true.</summary>
    public static void YetRecorded(Shell shell, Desk desk, string on)
    {
        if (Handover.YetRecorded.Warning(desk, on) is { } warning)
        {
            shell.Error.WriteLine($"CAUTION {warning}");
        }
    }

    /// <summary>An isolation got another owner: no lock moved by that.</summary>
    /// <param name="before">As it stood before.</param>
    public static void NewOwner(Shell shell, Site site, CarriedItem before, CarryConfirmed look)
    {
        if (LocksOn.OnNewOwner(site, before, look) is { } words)
        {
            shell.Error.WriteLine($"CAUTION {words}");
        }
    }

    /// <summary>A lock came off an isolation while people are or may be inside under its permit: what is left.</summary>
    /// <param name="before">As it stood before.</param>
    public static void LockOff(Shell shell, Desk desk, CarriedItem before, CarryConfirmed look, string by)
    {
        if (LocksOn.OnLockOff(desk.Site, desk.State.Carried, before, look, by) is { } words)
        {
            shell.Error.WriteLine($"CAUTION {Say.Equipment(desk.Site, before.On)}: {words}");
        }
    }

    /// <summary>Before the PIN is asked: an isolation that is closed under a permit that is still open.</summary>
    public static void BeforeClosing(Shell shell, Desk desk, long id)
    {
        desk.Follow();
        if (desk.State.Carried.Find(i => i.Id == id) is { } item && SignedWriting.LocksForPeople(desk.Site, desk.State.Carried, item) is null
            && SignedWriting.PermitStands(desk.Site, desk.State.Carried, item) is { } warning)
        {
            shell.Error.WriteLine($"CAUTION {warning}");
        }
    }

    private static void Print(Shell shell, Site site, IReadOnlyList<string> triggers)
    {
        foreach (var caution in site.Cautions.Where(c => c.Triggers.Intersect(triggers, StringComparer.OrdinalIgnoreCase).Any()))
        {
            shell.Error.WriteLine(Say.Visible($"CAUTION {caution.Hazard}: {caution.Text}"));
            shell.Error.WriteLine(Say.Visible($"  wear: {Say.Sentence(caution.Ppe)} First aid: {Say.Sentence(caution.FirstAid)}"));
            shell.Error.WriteLine(Say.Visible($"  source: {caution.Source}, revision {caution.Revision}{(caution.ApprovedBy is null ? ", DRAFT, not approved by the site" : "")}"));
        }
    }
}
