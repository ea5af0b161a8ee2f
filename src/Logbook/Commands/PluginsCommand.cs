using System.CommandLine;
using Logbook.Handover;
using Logbook.PluginHost;

namespace Logbook.Commands;

/// <summary>Which plug-ins there are, and trusting the site's own.</summary>
internal static class PluginsCommand
{
    private const string Rights =
        "A plug-in is code that runs with the program's rights: it can read and change whatever the program can, this journal included. ";

    private static readonly Rows<PluginReport> Listing = new("plugins",
        new("name", p => p.Name), new("version", p => p.Version), new("state", p => p.State), new("code", p => p.Code.Length == 0 ? null : p.Code),
        new("calculations", p => p.Calculations.Select(c => c.Info.Id).ToList()), new("text", p => p.Text.Length == 0 ? null : p.Text));

    public static Command Make(Shell shell) => new("plugins", Rights + "Only files that were hashed and trusted are loaded.") { List(shell), Trust(shell) };

    private static Command List(Shell shell)
    {
        var json = Options.Json();
        var list = new Command("list", $"Each plug-in, the shipped ones and the site's own, whether it is loaded, and what it offers. {Listing.Keys}") { json };
        list.SetAction(parse => OpenSite.Guarded(shell, () =>
            Listing.Print(shell, parse.GetValue(json), OpenSite.Plugins(shell, OpenSite.Folder(shell, parse)), "no plug-in beside the program")));
        return list;
    }

    private static Command Trust(Shell shell)
    {
        var name = new Argument<string>("NAME") { Description = "The folder in the site's plugins/, named like its assembly." };
        var why = Options.Text("--why", "Whose it is, and why it is trusted.", "TEXT");
        var by = Options.By();
        var json = Options.Json();
        var trust = new Command("trust", Rights + "An engineer trusts it as its files are now; when one of them changes it is not loaded any more, until it is trusted anew. Signed by PIN.") { name, why, by, json };
        var signing = SigningOptions.New();
        signing.AddTo(trust);
        trust.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
        {
            var plugin = parse.GetValue(name)!;
            if (PluginCatalog.FilesOf(OpenSite.OwnPlugins(OpenSite.Folder(shell, parse)), plugin, out var trouble) is not { } files)
            {
                return shell.Refuse($"{plugin} cannot be trusted: {trouble}");
            }

            var code = WrittenOut.Print(shell, parse.GetValue(json), SignedWriting.Trust(desk, signing.Of(shell, parse), plugin, files, parse.GetValue(why) ?? "", parse.GetValue(by) ?? ""), $"{plugin} is trusted");
            return code == ExitCode.Done ? Tried(shell, parse, plugin, parse.GetValue(json)) : code;
        }));
        return trust;
    }

    /// <summary>Loads it as the next start will: only now may its code run.</summary>
    private static int Tried(Shell shell, ParseResult parse, string plugin, bool json)
    {
        var report = OpenSite.Plugins(shell, OpenSite.Folder(shell, parse)).Last(p => p.Name == plugin);
        if (report.Text.Length > 0)
        {
            shell.Error.WriteLine(OpenSite.NotUsed(report));
        }
        else if (!json)
        {
            shell.Out.WriteLine($"it loads, and offers {string.Join(", ", report.Calculations.Select(c => c.Info.Id))}");
        }

        return ExitCode.Done;
    }
}
