using Logbook.Handover;
using Logbook.Plant;

namespace Logbook;

/// <summary>The site's caution for what was just opened, on the error stream so that it never mixes with an answer.</summary>
internal static class CautionText
{
    public static void Print(Shell shell, Site site, string trigger)
    {
        foreach (var caution in site.Cautions.Where(c => c.Triggers.Contains(trigger, StringComparer.OrdinalIgnoreCase)))
        {
            shell.Error.WriteLine(Say.Visible($"CAUTION {caution.Hazard}: {caution.Text}"));
            shell.Error.WriteLine(Say.Visible($"  wear: {caution.Ppe}. First aid: {caution.FirstAid}"));
            shell.Error.WriteLine(Say.Visible($"  source: {caution.Source}, revision {caution.Revision}{(caution.ApprovedBy is null ? ", DRAFT, not approved by the site" : "")}"));
        }
    }
}
