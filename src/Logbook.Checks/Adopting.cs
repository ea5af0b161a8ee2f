using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Putting the folder's files in force.</summary>
internal static class Adopting
{
    /// <summary>The folder's files with what they change. Files with mistakes are refused before.</summary>
    public static SiteAdopted Body(Desk desk, string why) =>
        new(desk.Files.Texts, why.Trim()) { Changes = SiteChanges.Between(desk.Site, desk.Folder.Value!) };

    public static IEnumerable<Mistake> Mistakes(Desk desk, Site site, string why, string by) =>
    [
        .. Given.Text(why, "the reason for adopting"),
        .. Given.Engineer(site, by, "puts site files in force"), // the site in force says who: a changed file cannot make its author an engineer
        .. desk.Folder.Mistakes,
        .. desk.Folder.Value is { } folder ? CalculationGraph.Check(folder, desk.Calculations) : [],
        .. SameChain(desk, site),
        .. IsInForce(desk) ? Writing.Of("the folder's files are those in force", "change them first") : [],
    ];

    /// <summary>The id names the chain: with another one the journal would be another line's.</summary>
    private static IEnumerable<Mistake> SameChain(Desk desk, Site site) =>
        desk.Folder.Value is { } folder && !folder.Id.Equals(site.Id, StringComparison.Ordinal)
            ? Writing.Of($"the files name the site '{folder.Id}', the journal is of '{site.Id}'", "an id does not change")
            : [];

    private static bool IsInForce(Desk desk) => desk.State.Files is { } files
        && files.Texts.Count == desk.Files.Texts.Count
        && files.Texts.All(t => desk.Files.Texts.TryGetValue(t.Key, out var text) && text.Equals(t.Value, StringComparison.Ordinal));
}
