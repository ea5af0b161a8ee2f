using System.CommandLine;
using Logbook.PluginHost;

namespace Logbook.Commands;

internal static class PluginsCommand
{
    private static readonly Rows<PluginReport> Listing = new("plugins",
        new("name", p => p.Name), new("version", p => p.Version), new("state", p => p.State), new("code", p => p.Code.Length == 0 ? null : p.Code),
        new("calculations", p => p.Calculations.Select(c => c.Info.Id).ToList()), new("text", p => p.Text.Length == 0 ? null : p.Text));

    public static Command Make(Shell shell)
    {
        var json = Options.Json();
        var list = new Command("list", $"Each plug-in, whether it is loaded, and what it offers. {Listing.Keys}") { json };
        list.SetAction(parse => Listing.Print(shell, parse.GetValue(json), OpenSite.Plugins(), "no plug-in beside the program"));
        return new Command("plugins", "Plug-ins are code with the program's rights: only hashed, trusted files are loaded.") { list };
    }
}
