using System.CommandLine;
using System.Globalization;
using Logbook.Checks;
using Logbook.Demo;
using Logbook.Handover;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Commands;

/// <summary>The invented mill, with history, to try the program on.</summary>
internal static class DemoCommand
{
    public static Command Make(Shell shell)
    {
        var folder = new Option<string?>("--in") { Description = "Where the demo site goes, a folder that is not there yet, or is empty; one under the temporary folder unless said.", HelpName = "DIR" };
        var days = new Option<int>("--days") { Description = "Days of history.", DefaultValueFactory = _ => 14, HelpName = "N" };
        var seed = new Option<int>("--seed") { Description = "Another mill with the same plant.", DefaultValueFactory = _ => 1, HelpName = "N" };
        var noScreen = new Option<bool>("--no-screen") { Description = "Only make it; do not open the screen." };
        var command = new Command("demo", "Makes an invented mill with history, says what to try, and opens the screen.") { folder, days, seed, noScreen };
        command.SetAction(parse =>
        {
            if (parse.GetValue(days) is < 1 or > 3660)
            {
                return shell.Refuse($"--days {parse.GetValue(days)}", "1 to 3660");
            }

            var target = shell.FullPath(parse.GetValue(folder) ?? Path.Combine(Path.GetTempPath(), $"logbook-demo-{Guid.NewGuid():N}"[..30]));
            if (File.Exists(Path.Combine(target, SiteFiles.SiteToml)))
            {
                return shell.Refuse($"{target} already holds a site", "name another folder, or open it with: logbook --site " + target);
            }

            if (Directory.Exists(target) && Directory.EnumerateFileSystemEntries(target).Any())
            {
                return shell.Refuse($"{target} is not empty", "a new folder for the demo");
            }

            if (NewFile.AmongJournals(target) is { } among)
            {
                return shell.Refuse(among);
            }

            shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Making {parse.GetValue(days)} days of an invented mill, as its people would type them ..."));
            var files = DemoSite.Files(SiteReader.Load(Templates.Site).Value!, parse.GetValue(seed));
            var calculations = OpenSite.Calculations(shell, site: null);
            var made = OpenSite.Guarded(shell, () => Make(shell, target, files, calculations, parse.GetValue(days), parse.GetValue(seed)));
            return parse.GetValue(noScreen) || made != ExitCode.Done
                ? made
                : ScreenCommand.Beside(shell, target, by: null, new Pins(new PinFile(target), shell.PinRounds), (quiet, serve) => OpenSite.At(quiet, target, files, calculations, serve));
        });
        return command;
    }

    /// <summary>Makes the whole of it; when it is stopped or fails, nothing of it is left.</summary>
    private static int Make(Shell shell, string target, SiteFiles files, IReadOnlyList<LoadedCalculation> calculations, int days, int seed)
    {
        var whole = false;
        try
        {
            Directory.CreateDirectory(target);
            foreach (var (name, text) in files.Texts)
            {
                File.WriteAllText(Path.Combine(target, name), text);
            }

            var planted = Play(shell, target, files, calculations, days, seed);
            var site = SiteReader.Read(files).Value!;
            new PinFile(target).Change(_ => (DemoSite.Pins(site), true));
            Tell(shell, target, days, site, planted);
            whole = true;
            return ExitCode.Done;
        }
        finally
        {
            if (!whole && Directory.Exists(target))
            {
                Directory.Delete(target, recursive: true);
            }
        }
    }

    private static IReadOnlyList<PlantedEvent> Play(Shell shell, string target, SiteFiles files, IReadOnlyList<LoadedCalculation> calculations, int days, int seed)
    {
        using var desks = new Opened();
        using var progress = Progress.Of(shell, "typing, days", days);
        return DemoMill.Make(clock => desks.Add(OpenSite.Desk(shell, target, files, TimeSpan.FromSeconds(5), clock, calculations)), shell.Clock.GetUtcNow(), days, seed, progress.Work);
    }

    private static void Tell(Shell shell, string target, int days, Site site, IReadOnlyList<PlantedEvent> planted)
    {
        shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Demo site: {target}, {days} days of rounds of a mill that does not exist. Planted in it:"));
        foreach (var plant in planted)
        {
            shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {Calendar.ToSite(site, plant.At):ddd d MMM HH:mm}  {plant.Text}  (see: {plant.Where})"));
        }

        shell.Out.WriteLine($"Try: logbook --site {target}");
        shell.Out.WriteLine($"     logbook now --site {target}");
        shell.Out.WriteLine($"     logbook handover draft --site {target}");
        shell.Out.WriteLine($"     logbook audit --site {target}");
        shell.Out.WriteLine($"Everybody's PIN in the demo: {DemoSite.Pin}   (codes: logbook people list --site {target})");
    }

    /// <summary>The stores of the demo's terminals, closed together.</summary>
    private sealed class Opened : IDisposable
    {
        private readonly List<Desk> _desks = [];

        public Desk Add(Desk desk)
        {
            _desks.Add(desk);
            return desk;
        }

        public void Dispose() => _desks.ForEach(d => d.Store.Dispose());
    }
}
