using System.Diagnostics;
using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Logbook.Tests;

/// <summary>The program at a real terminal, as a person has it: typed, resized, suspended, hung up, killed and begun anew.</summary>
public sealed class AnEveningAtTheTerminal : IDisposable
{
    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [TmuxFact]
    public void A_round_whose_terminal_is_killed_in_the_middle_is_offered_again_and_saved()
    {
        using (var first = new Tmux(_cli.Folder))
        {
            OpenLineRound(first);
            first.Text("98.5\n").See("15 open").Text("n1\n").See("14 open");
            first.Kill();
        }

        WaitForNobody();
        Assert.Empty(Entries());
        using var second = new Tmux(_cli.Folder);
        second.See("Who is typing?").Text("op1\n").See("Typed, but not in the journal").See("98.5");
        second.Text("\n").See("14 open").Keys("Escape");

        WaitForOne();
        var readings = Entries().SelectMany(e => e.Readings).ToList();
        Assert.Equal("98.5 -", string.Join(' ', readings.Select(r => r.Typed ?? "-")));
    }

    [TmuxFact]
    public void What_another_terminal_saves_comes_to_a_screen_left_open_and_both_may_type()
    {
        using var terminal = new Tmux(_cli.Folder);
        OpenLineRound(terminal);
        terminal.Text("98.5\n").See("15 open");

        Assert.Equal(0, RealProgram.Run(_cli.Folder, "carry", "add", "--kind", "safety-equipment", "--on", "slaker", "--text", "eyewash: no flow", "--by", "op2").Code);
        terminal.Keys("Escape").See("What stands out").Keys("Escape").See("Which round?").Keys("Escape").See("no flow");

        WaitForOne();
        Assert.Equal("98.5", Assert.Single(Assert.Single(Entries()).Readings).Typed);
        Assert.Equal(0, RealProgram.Run(_cli.Folder, "remark", "rinsed by the other one", "--by", "op2", "--wait", "60").Code);
        terminal.Text("l").See("rinsed by the other one");
        Assert.Equal(0, _cli.Run("verify").Code);
    }

    [TmuxFact]
    public void Leaving_gives_the_terminal_back_as_it_was()
    {
        using var terminal = new Tmux(_cli.Folder);

        terminal.See("Who is typing?").Text("op1\n").See("Operator one is typing").Text("q").See("Left; nothing is unsaved.").See("ended=0");

        Assert.Equal("00", terminal.AlternateScreen);
        terminal.Text("stty -a | tr ';' '\\n' | grep -c -- ' echo '\n").See("1");
    }

    [TmuxFact]
    public void Asked_to_end_in_the_middle_of_a_round_it_says_what_is_left_and_gives_the_terminal_back()
    {
        using var terminal = EndedInARound("TERM", "Ended by SIGTERM; not saved, and offered again: Line round: 1 reading of Operator one");

        terminal.See("ended=0");
        Assert.Equal("00", terminal.AlternateScreen);
        OffersAgain(terminal);
    }

    [TmuxFact]
    public void A_hang_up_whose_terminal_is_still_there_is_told_on_it()
    {
        using var terminal = EndedInARound("HUP", "Ended by SIGHUP; not saved, and offered again: Line round");

        Assert.Equal("00", terminal.See("ended=0").AlternateScreen);
        OffersAgain(terminal);
    }

    [TmuxFact]
    public void Killed_in_the_middle_of_a_round_it_has_what_was_typed()
    {
        using var terminal = EndedInARound("KILL", "ended=137");

        OffersAgain(terminal);
    }

    [TmuxFact]
    public void A_terminal_that_goes_away_without_a_signal_ends_the_program_too()
    {
        using (var terminal = new Tmux(_cli.Folder, variables: "trap '' HUP;"))
        {
            terminal.See("Who is typing?").Text("op1\n").See("Operator one is typing");
            terminal.Kill();
        }

        WaitForNobody();
        Assert.Null(TheProgram());
    }

    [TmuxFact]
    public void A_suspended_screen_comes_back()
    {
        using var terminal = new Tmux(_cli.Folder);
        terminal.See("Who is typing?").Text("op1\n").See("Operator one is typing").Keys("C-z").See("Stopped");

        terminal.Text("fg\n").See("? keys").Text("l").See("Log, newest record first");
    }

    [TmuxFact]
    public void Stopped_from_outside_and_taken_up_again_it_is_drawn_whole()
    {
        using var terminal = new Tmux(_cli.Folder);
        terminal.See("Who is typing?").Text("op1\n").See("Operator one is typing");
        Signal("STOP");

        terminal.See("Stopped").Text("fg\n");

        Until(() => !terminal.Screen.Contains("Stopped", StringComparison.Ordinal));
        Assert.DoesNotContain("Stopped", terminal.See("? keys").Screen, StringComparison.Ordinal);
        terminal.Text("l").See("Log, newest record first");
    }

    [TmuxFact]
    public void The_screen_follows_the_terminals_size()
    {
        using var terminal = new Tmux(_cli.Folder);
        terminal.See("Who is typing?").Text("op1\n").See("Operator one is typing");

        terminal.Size(120, 40).See("q leave").Size(40, 10).See("? keys").Size(80, 24).See("r round");
    }

    [TmuxFact]
    public void Without_colour_there_is_none_and_with_sixteen_the_levels_have_theirs()
    {
        _cli.Run("carry", "add", "--kind", "safety-equipment", "--on", "slaker", "--text", "eyewash: no flow", "--by", "op1");
        using var plain = new Tmux(_cli.Folder, variables: "NO_COLOR=1");
        plain.See("Who is typing?").Text("op1\n").See("OUT");
        using var sixteen = new Tmux(_cli.Folder, variables: "TERM=xterm-16color");
        sixteen.See("Who is typing?").Text("op1\n").See("OUT");

        Assert.DoesNotMatch("\u001b\\[[0-9;]*(3[0-8]|4[0-8]|9[0-7]|10[0-7])[;m]", plain.Coloured);
        Assert.Matches("\u001b\\[[0-9;]*(3[0-7]|9[0-7])[;m]", sixteen.Coloured);
        Assert.DoesNotContain("38;2;", sixteen.Coloured, StringComparison.Ordinal);
    }

    [TmuxFact]
    public void Keypad_digits_and_a_pasted_column_with_controls_in_it_arrive_as_values()
    {
        using var terminal = new Tmux(_cli.Folder);
        OpenLineRound(terminal);

        terminal.Keys("KP9", "KP8", "KP.", "KP5", "KPEnter").See("15 open");
        terminal.Paste("86.1\n295\n\u0007\u001b[31m\n");

        terminal.See("13 open").See("not accepted");
    }

    [TmuxFact]
    public void A_terminal_that_cannot_draw_is_told_so_in_one_line()
    {
        using var terminal = new Tmux(_cli.Folder, variables: "TERM=dumb");

        terminal.See("TERM says that this terminal cannot draw").See("ended=69");
    }

    [Fact]
    public void Without_a_terminal_the_screen_does_not_wait_for_one()
    {
        using var alone = Process.Start(new ProcessStartInfo("setsid", ["--wait", "dotnet", Path.Combine(AppContext.BaseDirectory, "logbook.dll"), "--site", _cli.Folder])
        {
            UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true,
        })!;
        var error = alone.StandardError.ReadToEnd();
        alone.WaitForExit();

        Assert.Equal(69, alone.ExitCode);
        Assert.StartsWith("the screen needs a terminal", error, StringComparison.Ordinal);
    }

    /// <summary>One reading is typed, then the program gets the signal.</summary>
    private Tmux EndedInARound(string signal, string says)
    {
        var terminal = new Tmux(_cli.Folder, width: 120);
        OpenLineRound(terminal);
        terminal.Text("98.5\n").See("15 open");
        Signal(signal);
        return terminal.See(says);
    }

    private void Signal(string signal)
    {
        using var kill = Process.Start("kill", [$"-{signal}", FormattableString.Invariant($"{TheProgram()}")]);
        kill.WaitForExit();
    }

    private void OffersAgain(Tmux terminal)
    {
        Assert.Empty(Entries());
        terminal.Text("\nclear\n").Start(_cli.Folder);
        terminal.See("Who is typing?").Text("op1\n").See("Typed, but not in the journal").See("98.5");
    }

    private int? TheProgram() => Process.GetProcesses().FirstOrDefault(p => VariablesOf(p).Contains($"LOGBOOK_SITE={_cli.Folder}", StringComparison.Ordinal))?.Id;

    private static void OpenLineRound(Tmux terminal)
    {
        terminal.See("Who is typing?").Text("op1\n").See("Operator one is typing").Text("r").See("Which round?");
        var row = terminal.Screen.Split('\n').First(l => l.Contains("Line round", StringComparison.Ordinal));
        terminal.Text($"{row.TrimStart(' ', '>')[0]}\n").See("LINE ROUND").See("16 open");
    }

    private IReadOnlyList<Entry> Entries()
    {
        using var journal = new LiteDbJournal(_cli.Folder, "afterwards", TimeProvider.System);
        return [.. journal.Read().Select(r => r.Body).OfType<Entry>()];
    }

    /// <summary>The program that lost its terminal has ended: nobody holds the draft.</summary>
    private void WaitForNobody() => Until(() => !Process.GetProcesses().Any(p => CommandLineOf(p).Contains(_cli.Folder, StringComparison.Ordinal) || VariablesOf(p).Contains(_cli.Folder, StringComparison.Ordinal)));

    private void WaitForOne() => Until(() => Entries().Count > 0);

    private static void Until(Func<bool> done)
    {
        for (var i = 0; i < 600 && !done(); i++)
        {
            Thread.Sleep(100);
        }
    }

    private static string CommandLineOf(Process process) => Of(process, "cmdline");

    private static string VariablesOf(Process process) => Of(process, "environ");

    private static string Of(Process process, string file)
    {
        try
        {
            return File.ReadAllText(FormattableString.Invariant($"/proc/{process.Id}/{file}"));
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }
}
