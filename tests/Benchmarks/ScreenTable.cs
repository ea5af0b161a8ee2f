using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Logbook;
using Logbook.Plant;

namespace Benchmarks;

/// <summary>
/// The screen against a bare window of the same toolkit, both published in the same way: first paint, memory, key to paint on
/// a round of 400 points, and a day of keys.
/// </summary>
internal static class ScreenTable
{
    private const int Starts = 11;
    private const int Keys = 300;
    private const int DaysOfKeys = 2;

    // A folder with both published already: what is measured then begins at once.
    private const string Published = "LOGBOOK_PUBLISHED";

    /// <param name="soakAlone">Only the days of keys.</param>
    public static void Print(bool soakAlone)
    {
        var folder = Directory.CreateTempSubdirectory("logbook-screen-").FullName;
        try
        {
            var published = Environment.GetEnvironmentVariable(Published) is { Length: > 0 } there ? there : folder;
            var bare = Publish("tests/BareWindow", "BareWindow", Path.Combine(published, "bare"));
            var logbook = Publish("src/Logbook", "logbook", Path.Combine(published, "logbook"));
            var site = Site(Path.Combine(folder, "site"), 400);
            if (!soakAlone)
            {
                Table.Header();
                FirstPaint(bare, logbook, site);
                Memory(bare, logbook, site);
                KeyToPaint(logbook, site);
            }

            Soak(logbook, site);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Turn by turn, so that what else the machine does falls on both alike. Each program's first start is not counted.</summary>
    private static void FirstPaint(string bare, string logbook, string site)
    {
        var taken = (Bare: new List<double>(), Ours: new List<double>(), Open: new List<double>());
        for (var i = 0; i <= Starts; i++)
        {
            using (var window = new AtTerminal(bare, site))
            {
                taken.Bare.Add(Elapsed(window, "a bare window"));
            }

            using var screen = new AtTerminal(logbook, site);
            taken.Ours.Add(Elapsed(screen, "Opening"));
            taken.Open.Add(Elapsed(screen, "Who is typing?"));
        }

        Table.Row("first paint, a bare window", [.. taken.Bare.Skip(1)]);
        Table.Row("first paint, the screen (says that it opens the site)", [.. taken.Ours.Skip(1)]);
        Table.Row("the site open, who is typing is asked", [.. taken.Open.Skip(1)]);
        Say($"first paint against the bare window: {Median(taken.Ours) / Median(taken.Bare):0.00} times");
    }

    private static double Elapsed(AtTerminal terminal, string words) => Stopwatch.GetElapsedTime(terminal.Begun, terminal.Painted(words)).TotalMilliseconds;

    private static double Median(IEnumerable<double> taken) => taken.Skip(1).Order().ElementAt(Starts / 2);

    private static void Memory(string bare, string logbook, string site)
    {
        using var window = new AtTerminal(bare, site);
        using var screen = new AtTerminal(logbook, site);
        window.Painted("a bare window");
        screen.Painted("Who is typing?");
        OpenRound(screen);
        Thread.Sleep(15_000);
        Say($"memory: a bare window {window.Memory():0.0} MB, the screen in a round of 400 points {screen.Memory():0.0} MB: {screen.Memory() - window.Memory():0.0} MB more");
    }

    private static void KeyToPaint(string logbook, string site)
    {
        using var terminal = new AtTerminal(logbook, site);
        terminal.Painted("Who is typing?");
        OpenRound(terminal);
        var taken = Enumerable.Range(0, Keys).Select(i =>
        {
            Thread.Sleep(30 + (i * 7 % 20)); // a person's keys come at any moment of the loop's turn
            return terminal.KeyToPaint((i % 4) switch { 0 => "5", 1 => "0", 2 => ".", _ => "\r" });
        }).ToArray();
        Table.Row("key to paint, a round of 400 points", taken);
        Say($"key to paint, 90th percentile: {taken[(int)(taken.Length * 0.9)]:0.0} ms");
    }

    /// <summary>About what a day and a night of three people press: rounds typed and left, log, graph, audit, finder, what is carried, help; three handovers read.</summary>
    private static void Soak(string logbook, string site)
    {
        using var terminal = new AtTerminal(logbook, site);
        terminal.Painted("Who is typing?");
        OpenRound(terminal);
        var row = RowOf(terminal, "Long round");
        terminal.Send("\e");
        Thread.Sleep(500);
        List<double> memory = [Quiet(terminal)];
        var keys = 0;
        for (var day = 0; day < DaysOfKeys; day++)
        {
            for (var hour = 0; hour < 24; hour++)
            {
                if (hour == 12)
                {
                    memory.Add(Quiet(terminal));
                }

                foreach (var burst in (string[])[$"r{row}\r", .. Enumerable.Range(0, 40).Select(i => $"{50 + ((hour + i) % 9)}.{i % 10}\r"), "\e", "\e", "l\e[B\e[B\e[6~\r", "\e", "\e", "/slaker\r", "\e", "\e", "g", "\e", "a", "\e", "c", "\e", "?", "\e", .. hour % 8 == 7 ? (string[])["h", "\r", "\r", "\r", "\r", "\e", "\e"] : []])
                {
                    terminal.Send(burst);
                    keys += burst.Length;
                    Thread.Sleep(burst.Contains('\e', StringComparison.Ordinal) ? 120 : 15); // an Esc is told from a sequence by what follows
                }
            }

            memory.Add(Quiet(terminal));
        }

        Say($"memory over {DaysOfKeys} days of keys ({keys / DaysOfKeys} a day), at the start, then in the middle and at the end of each: {string.Join(", ", memory.Select(m => m.ToString("0.0", CultureInfo.InvariantCulture)))} MB");
    }

    /// <summary>After ten quiet seconds it gives back what it no longer needs.</summary>
    private static double Quiet(AtTerminal terminal)
    {
        Thread.Sleep(13_000);
        terminal.Forget();
        return terminal.Memory();
    }

    private static void OpenRound(AtTerminal terminal)
    {
        terminal.Send("op1\r");
        terminal.Painted("is typing");
        terminal.Send("r");
        terminal.Painted("Long round");
        terminal.Send($"{RowOf(terminal, "Long round")}\r");
        terminal.Painted("400 open");
        Thread.Sleep(1000);
    }

    /// <summary>Its digit in the list of rounds, which goes by what is open.</summary>
    private static string RowOf(AtTerminal terminal, string round) => Regex.Match(terminal.All, $"([1-9]) {round}", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups[1].Value;

    private static string Publish(string project, string name, string to)
    {
        if (File.Exists(Path.Combine(to, name)))
        {
            return Path.Combine(to, name);
        }

        var rid = System.Runtime.InteropServices.RuntimeInformation.RuntimeIdentifier;
        using var publish = Process.Start(new ProcessStartInfo("dotnet", ["publish", Path.Combine(Root(), project), "-c", "Release", "-r", rid, "--self-contained", "false", "-p:PublishReadyToRun=true", "-o", to, "-v", "q"]))!;
        publish.WaitForExit();
        return publish.ExitCode == 0 ? Path.Combine(to, name) : throw new InvalidOperationException($"{project} was not published");
    }

    /// <summary>The starter site with a round of so many points.</summary>
    private static string Site(string folder, int points)
    {
        Directory.CreateDirectory(folder);
        foreach (var file in Directory.EnumerateFiles(Templates.Site))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        }

        string[] tags = [.. Enumerable.Range(1, points).Select(i => $"XX-{i}")];
        var csv = Path.Combine(folder, SiteFiles.PointsCsv);
        var columns = File.ReadLines(csv).First().Split(',');
        string Row(string tag) => string.Join(',', columns.Select(c => c switch { "tag" => tag, "description" => $"Test point {tag}", "area" => "site", "unit" => "%", "kind" => "read", "decimals" => "1", "lowest" => "0", "highest" => "100", "watch_high" => "90", _ => "" }));
        File.AppendAllLines(csv, tags.Select(Row));
        File.AppendAllText(Path.Combine(folder, SiteFiles.SiteToml), $"\n[[round]]\nid = \"long\"\ntitle = \"Long round\"\nevery = \"1h\"\nearly = \"59m\"\nlate = \"1m\"\npoints = [{string.Join(", ", tags.Select(t => $"\"{t}\""))}]\n");
        return folder;
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Logbook.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("run it inside the source tree");
        }

        return folder.FullName;
    }

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
