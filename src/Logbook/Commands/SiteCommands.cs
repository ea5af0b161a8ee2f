using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>A new site, its check, and putting its files in force.</summary>
internal static class SiteCommands
{
    public static Command Init(Shell shell)
    {
        var folder = new Argument<string>("DIR") { Description = "The new site's folder; it must not hold a site yet." };
        var command = new Command("init", "Makes a new site folder from the shipped starter site, to be edited.") { folder };
        command.SetAction(parse =>
        {
            var target = shell.FullPath(parse.GetValue(folder)!);
            if (File.Exists(Path.Combine(target, SiteFiles.SiteToml)))
            {
                return shell.Refuse($"{target} already holds a {SiteFiles.SiteToml}", "name another folder");
            }

            if (NewFile.AmongJournals(target) is { } among)
            {
                return shell.Refuse(among);
            }

            Directory.CreateDirectory(target);
            foreach (var file in Directory.EnumerateFiles(Templates.Site))
            {
                File.Copy(file, Path.Combine(target, Path.GetFileName(file)), overwrite: false);
            }

            shell.Out.WriteLine($"{target}: starter site written; edit site.toml, points.csv and cautions.toml, then: logbook check --site {target}");
            return ExitCode.Done;
        });
        return command;
    }

    public static Command Check(Shell shell)
    {
        var command = new Command("check", "Reports every mistake in the site's files as file:line:column, with what is accepted.");
        command.SetAction(parse => OpenSite.Guarded(shell, () =>
        {
            var folder = OpenSite.Folder(shell, parse);
            var files = SiteReader.Load(folder);
            if (!files.Ok)
            {
                return shell.Refuse(files.Mistakes);
            }

            var site = SiteReader.Read(files.Value!);
            if (!site.Ok)
            {
                return shell.Refuse(site.Mistakes);
            }

            var mistakes = CalculationGraph.Check(site.Value!, OpenSite.Calculations(shell, folder));
            if (mistakes.Count > 0)
            {
                return shell.Refuse(mistakes);
            }

            shell.Out.WriteLine($"{site.Value!.Name}: no mistake in {site.Value.Points.Count} points, {site.Value.Rounds.Count} rounds and {site.Value.Calculations.Count} calculations");
            Load(shell, site.Value);
            return OpenSite.ForReading(shell, parse, desk =>
            {
                if (NowView.Of(desk).FilesDiffer)
                {
                    shell.Out.WriteLine("These files differ from those in force. Put them in force with: logbook adopt --why TEXT --by ENGINEER");
                }

                return ExitCode.Done;
            });
        }));
        return command;
    }

    private static void Load(Shell shell, Site site)
    {
        var share = Workload.Share(site);
        shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Rounds take {Workload.MinutesPerShift(site):F0} minutes of a shift, {100 * share:F0} % of it"));
        if (share > Workload.Most)
        {
            shell.Out.WriteLine("WARNING: more than a quarter of the shift; rounds that cannot be walked are not walked. Make them fewer, rarer or shorter");
        }
    }

    public static Command Adopt(Shell shell)
    {
        var why = Options.Text("--why", "Why the files change.", "TEXT");
        var by = Options.By();
        var json = Options.Json();
        var command = new Command("adopt", "Puts the folder's changed files in force; a past entry keeps the limits of its day. Signed by PIN.") { why, by, json };
        var signing = SigningOptions.New();
        signing.AddTo(command);
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var adopted = SignedWriting.Adopt(desk, signing.Of(shell, parse), parse.GetValue(why) ?? "", parse.GetValue(by) ?? "");
            var code = WrittenOut.Print(shell, parse.GetValue(json), adopted, "in force");
            foreach (var change in parse.GetValue(json) ? [] : (adopted.Record?.Body as SiteAdopted)?.Changes ?? [])
            {
                shell.Out.WriteLine($"  {Say.Visible(change)}");
            }

            return code;
        }));
        return command;
    }
}
