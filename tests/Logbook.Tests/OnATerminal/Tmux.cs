using System.Diagnostics;
using System.Globalization;

namespace Logbook.Tests;

/// <summary>
/// A terminal of its own, with a shell in it that starts the program: keys are sent, the screen is read. The program is the
/// published one when LOGBOOK_PUBLISHED names its folder, else the one that was built with the tests.
/// </summary>
internal sealed class Tmux : IDisposable
{
    // A limit for what hangs, not an expectation: every wait ends as soon as the words are there.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(90);

    private readonly string _socket = "logbook-" + Guid.NewGuid().ToString("N")[..12];

    public Tmux(string site, int width = 80, int height = 24, string variables = "")
    {
        Run("-f", "/dev/null", "new-session", "-d", "-s", "t", "-x", Number(width), "-y", Number(height), "bash --norc --noediting");
        Start(site, variables);
    }

    public string Screen => Run("capture-pane", "-t", "t", "-p");

    /// <summary>The screen with its colours, as escape sequences.</summary>
    public string Coloured => Run("capture-pane", "-t", "t", "-p", "-e");

    public string AlternateScreen => Run("display-message", "-p", "-t", "t", "#{alternate_on}#{mouse_any_flag}").Trim();

    /// <summary>Why no terminal can be made here; null when one can.</summary>
    public static string? WhyNot()
    {
        var found = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, "tmux")));
        return found ? null : "tmux is not installed here: these tests need a real terminal";
    }

    /// <summary>Starts the program in the shell; what it ends with stands on the screen as <c>ended=CODE</c>.</summary>
    public void Start(string site, string variables = "") => Text($"{variables} LOGBOOK_SITE={site} {Program}; echo ended=$?\n");

    public Tmux Keys(params string[] names)
    {
        foreach (var name in names)
        {
            Run("send-keys", "-t", "t", name);
        }

        return this;
    }

    public Tmux Text(string text)
    {
        Run("send-keys", "-t", "t", "-l", text);
        return this;
    }

    public Tmux Paste(string text)
    {
        Run("set-buffer", text);
        Run("paste-buffer", "-p", "-t", "t");
        return this;
    }

    public Tmux Size(int width, int height)
    {
        Run("resize-window", "-t", "t", "-x", Number(width), "-y", Number(height));
        return this;
    }

    /// <summary>Waits until the words stand on the screen.</summary>
    public Tmux See(string words)
    {
        var begun = Stopwatch.GetTimestamp();
        while (!Screen.Contains(words, StringComparison.Ordinal))
        {
            if (Stopwatch.GetElapsedTime(begun) > Longest)
            {
                Assert.Fail($"'{words}' did not come:\n{Screen}");
            }

            Thread.Sleep(50);
        }

        return this;
    }

    /// <summary>The terminal goes away under the program.</summary>
    public void Kill() => Run("kill-session", "-t", "t");

    public void Dispose() => Try("kill-server");

    private static string Program => Environment.GetEnvironmentVariable("LOGBOOK_PUBLISHED") is { Length: > 0 } published
        ? Path.Combine(published, "logbook")
        : $"dotnet {Path.Combine(AppContext.BaseDirectory, "logbook.dll")}";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private string Run(params string[] args)
    {
        var (code, shown) = Try(args);
        return code == 0 ? shown : throw new InvalidOperationException($"tmux {string.Join(' ', args)}: {code}");
    }

    private (int Code, string Out) Try(params string[] args)
    {
        using var tmux = Process.Start(new ProcessStartInfo("tmux", ["-L", _socket, .. args]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var shown = tmux.StandardOutput.ReadToEnd();
        tmux.WaitForExit();
        return (tmux.ExitCode, shown);
    }
}
