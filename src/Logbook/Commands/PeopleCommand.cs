using System.CommandLine;
using Logbook.Plant;

namespace Logbook.Commands;

internal static class PeopleCommand
{
    private static readonly Rows<Person> Listing = new("people",
        new("code", p => p.Code), new("name", p => p.Name), new("role", p => p.Role.ToString().ToLowerInvariant()), new("crew", p => p.Crew));

    public static Command Make(Shell shell)
    {
        var json = Options.Json();
        var list = new Command("list", $"The site's people. {Listing.Keys}") { json };
        list.SetAction(parse => OpenSite.ForReading(shell, parse, desk => Listing.Print(shell, parse.GetValue(json), desk.Site.People, "the site file names nobody")));
        return new Command("people", "The people who may write.") { list };
    }
}
