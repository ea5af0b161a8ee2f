namespace Logbook.Tests;

/// <summary>The line is taken, prepared, read, asked about, taken over, relieved and left, each step with its exit code.</summary>
public class AHandoverByCommandLine
{
    private const string Pin = "274951";

    private static readonly string[] Declared =
        ["inside", "locked", "defeated", "out", "acid", "gas", "injury", "release"];

    [Fact]
    public void A_whole_handover_from_nobody_to_the_next_shift()
    {
        using var cli = Signed("op1", "op3", "sup1");
        Assert.StartsWith("NOBODY HOLDS THE LINE; call Supervisor (sup1)", cli.Run("now").Out.Split('\n')[1], StringComparison.Ordinal);

        // The first one takes it from nobody; a supervisor signs.
        Open(cli, "op1");
        Refused(cli.RunWith(Pin, "handover", "accept", "--first", "walk the line", "--by", "op1", "--pin-file", "-"), "--unattended");
        Done(cli.RunWith(Pin, "handover", "accept", "--first", "walk the line", "--unattended", "new log", "--by", "op1", "--pin-file", "-"));
        Done(cli.RunWith(Pin, "handover", "countersign", "--why", "walked it together", "--by", "sup1", "--pin-file", "-"));

        // Prepared near the end of the shift.
        cli.Clock.Advance(TimeSpan.FromHours(8.6));
        Done(cli.Run("carry", "add", "--kind", "isolation", "--on", "mud-pump", "--text", "seal change", "--set", "permit=4417", "--set", "points=2", "--by", "op1"));
        Done(Prepare(cli));

        // Read, asked, answered, taken over.
        Refused(cli.RunWith(Pin, "handover", "accept", "--first", "pump first", "--by", "op3", "--pin-file", "-"), "not seen yet: hazards, moving, changed");
        Assert.Contains("DO NOT START", Open(cli, "op3"), StringComparison.Ordinal);
        var asked = Done(cli.Run("handover", "ask", "lime rate now?", "--by", "op3", "--json")).Json.GetProperty("seq").GetInt64();
        Done(cli.Run("handover", "reply", $"{asked}", "16.4", "--from", "op1", "--by", "op3"));
        Refused(cli.RunWith(Pin, "handover", "accept", "--first", "pump first", "--by", "op3", "--pin-file", "-"), "to answer and 0 answered");
        Refused(Accept(cli, "000999"), "that is not op3's PIN");
        var accepted = Done(Accept(cli, Pin));
        Assert.Contains("bowl may climb", accepted.Error, StringComparison.Ordinal);
        Assert.Equal(3, accepted.Error.Split("bowl may climb").Length); // above the signature, and once more under it
        Assert.StartsWith("Operator three holds the line since 18:36", cli.Run("now").Out.Split('\n')[1], StringComparison.Ordinal);

        // The note says who gave, who holds, what both said and what it means.
        var note = cli.Run("handover", "show", "2026-11-25-D-" + ShiftCrew(cli)).Out;
        var running = string.Join(' ', note.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)); // whatever line it broke at
        Assert.Contains("Gave: Operator one, prepared 18:36; holds the line: Operator three, from 18:36", running, StringComparison.Ordinal);
        Assert.Contains("pump first", note, StringComparison.Ordinal);
        Assert.Contains("lime rate now? Operator one, aloud 18:36: 16.4", running, StringComparison.Ordinal);
        Assert.Equal(0, cli.Run("verify").Code);
    }

    [Fact]
    public void An_emergency_relief_needs_no_pin_and_no_pin_file_even_while_wrong_ones_wait()
    {
        using var cli = Signed("op1");
        Open(cli, "op1");
        for (var i = 0; i < 5; i++)
        {
            cli.RunWith("000999", "handover", "accept", "--first", "x", "--unattended", "new log", "--by", "op1", "--pin-file", "-");
        }

        Refused(cli.RunWith(Pin, "handover", "accept", "--first", "x", "--unattended", "new log", "--by", "op1", "--pin-file", "-"), "waits another");
        Done(cli.Run("record", "SL-T1=101.2", "--by", "op1"));
        Done(cli.Run("handover", "relief", "--emergency", "--why", "1", "--by", "op1"));
        Assert.Contains("still to open hazards, moving, changed", cli.Run("now").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_terminal_and_without_a_file_the_pin_is_asked_for_in_one_line()
    {
        using var cli = Signed("op1");
        Open(cli, "op1");

        var answer = cli.Run("handover", "accept", "--first", "x", "--unattended", "new log", "--by", "op1");

        Assert.Equal("op1's PIN was not given: type it when asked, or --pin-file FILE ('-' is standard input)", Assert.Single(answer.Lines));
        Assert.Equal(3, answer.Code);
    }

    [Fact]
    public void The_pins_lie_beside_the_journal_for_their_owner_alone_and_in_no_record()
    {
        using var cli = Signed("op1");
        var file = Path.Combine(cli.Folder, "journal", "pins");

        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        }

        Assert.DoesNotContain(Pin, File.ReadAllText(file), StringComparison.Ordinal);
        Assert.DoesNotContain(File.ReadAllText(file).Split(' ')[3], cli.Run("log", "--json").Out, StringComparison.Ordinal);
        File.WriteAllText(file, "op1 600000 zz\n");
        var broken = cli.RunWith(Pin, "people", "pin", "op1", "--by", "op1", "--pin-file", "-", "--new-pin-file", "-");
        Assert.StartsWith($"{file}:1: ", Assert.Single(broken.Lines), StringComparison.Ordinal);
        Assert.Equal(4, broken.Code);
    }

    [Fact]
    public void A_closed_code_writes_no_more()
    {
        using var cli = Signed("op1", "sup1");

        Refused(cli.RunWith(Pin, "people", "close", "op2", "--why", "left", "--by", "op1", "--pin-file", "-"), "only a supervisor");
        Done(cli.RunWith(Pin, "people", "close", "op2", "--why", "left", "--by", "sup1", "--pin-file", "-"));

        var refused = cli.Run("remark", "hello", "--by", "op2");
        Assert.Equal((2, "op2 is closed and writes no more; use your own code"), (refused.Code, Assert.Single(refused.Lines)));
    }

    [Fact]
    public void A_hazard_is_closed_by_pin_and_anything_else_without()
    {
        using var cli = Signed("op1");
        string Add(string kind) => $"{Done(cli.Run("carry", "add", "--kind", kind, "--on", "mud-pump", "--text", "seal change", "--by", "op1", "--json")).Json.GetProperty("seq").GetInt64()}";
        var (action, isolation) = (Add("action"), Add("isolation"));

        Done(cli.Run("carry", "close", action, "--why", "done", "--by", "op1"));
        Refused(cli.Run("carry", "close", isolation, "--why", "done", "--by", "op1"), "PIN was not given");
        Done(cli.RunWith(Pin, "carry", "close", isolation, "--why", "permit handed back", "--by", "op1", "--pin-file", "-"));
    }

    [Fact]
    public void An_isolation_is_closed_with_the_own_lock_said_to_be_off()
    {
        using var cli = Signed("op1");
        var isolation = $"{Done(cli.Run("carry", "add", "--kind", "isolation", "--on", "mud-pump", "--text", "seal change", "--by", "op1", "--json")).Json.GetProperty("seq").GetInt64()}";
        Done(cli.Run("carry", "confirm", isolation, "--lock", "on", "--by", "op1"));

        var refused = cli.RunWith(Pin, "carry", "close", isolation, "--why", "done", "--by", "op1", "--pin-file", "-");
        Assert.Equal((2, $"the own lock of op1 is recorded as on at item {isolation}, which would be closed under it; --lock off, once it is off the board"), (refused.Code, Assert.Single(refused.Lines)));
        Done(cli.RunWith(Pin, "carry", "close", isolation, "--why", "done", "--lock", "off", "--by", "op1", "--pin-file", "-"));
    }

    [Fact]
    public void People_inside_are_told_when_acid_is_recorded_and_keep_their_lockout()
    {
        using var cli = Signed("op1");
        string Add(params string[] words) => $"{Done(cli.Run(["carry", "add", .. words, "--by", "op1", "--json"])).Json.GetProperty("seq").GetInt64()}";
        var isolation = Add("--kind", "isolation", "--on", "mud-pump", "--text", "locked for entry", "--set", "permit=4417");
        var permit = Add("--kind", "permit", "--on", "mud-tank", "--text", "inspection", "--until", "2026-11-26T10:00", "--set", "number=4417", "--set", "inside=2");

        Assert.Contains("2 counted inside (#" + permit + "). YET RECORDED AS ACID", Done(cli.Run("state", "mud-tank", "acid", "--by", "op1")).Error, StringComparison.Ordinal);
        Assert.Contains("YET RECORDED AS ACID", string.Join(' ', cli.Run("now").Out.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Refused(cli.RunWith(Pin, "carry", "close", isolation, "--why", "done", "--by", "op1", "--pin-file", "-"), "2 counted inside under permit 4417");
        Assert.DoesNotContain("YET RECORDED", Done(cli.Run("carry", "confirm", permit, "--set", "inside=0", "--by", "op1")).Error, StringComparison.Ordinal);
        Assert.Contains("YET RECORDED AS ACID", Done(cli.Run("carry", "confirm", permit, "--set", "inside=1", "--by", "op1")).Error, StringComparison.Ordinal);
        Done(cli.Run("carry", "confirm", permit, "--set", "inside=0", "--by", "op1"));
        Assert.Contains("is STILL OPEN and stands on this lockout", Done(cli.RunWith(Pin, "carry", "close", isolation, "--why", "done", "--by", "op1", "--pin-file", "-")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void People_whom_another_has_counted_are_counted_out_by_PIN()
    {
        using var cli = Signed("op1");
        var permit = $"{Done(cli.Run("carry", "add", "--kind", "permit", "--on", "mud-tank", "--text", "inspection", "--until", "2026-11-26T10:00", "--set", "number=4417", "--set", "inside=1", "--by", "op1", "--json")).Json.GetProperty("seq").GetInt64()}";
        Done(cli.Run("carry", "confirm", permit, "--set", "inside=2", "--by", "eng1"));

        Refused(cli.Run("carry", "confirm", permit, "--set", "inside=0", "--by", "op1"), "PIN was not given");
        Done(cli.RunWith(Pin, "carry", "confirm", permit, "--set", "inside=0", "--by", "op1", "--pin-file", "-"));
    }

    [Fact]
    public void Orders_that_stand_have_no_columns_of_those_that_were_withdrawn()
    {
        using var cli = Signed("op1");
        var order = $"{Done(cli.Run("order", "add", "liquor flow at 300", "--by", "eng1", "--json")).Json.GetProperty("seq").GetInt64()}";
        string Header(params string[] more) => Done(cli.Run(["order", "list", .. more])).Out.Split('\n')[0].Trim();

        Assert.DoesNotContain("withdrawn", Header(), StringComparison.Ordinal);
        Done(cli.Run("order", "withdraw", order, "--why", "filter is back", "--by", "eng1"));
        Assert.Contains("withdrawn by", Header("--all"), StringComparison.Ordinal);
    }

    [Fact]
    public void Site_files_are_put_in_force_by_an_engineers_pin()
    {
        using var cli = Signed("op1", "eng1");
        cli.Write("site.toml", File.ReadAllText(Path.Combine(cli.Folder, "site.toml")).Replace("Three Alders", "Four Alders", StringComparison.Ordinal));

        Assert.Equal(2, cli.RunWith(Pin, "adopt", "--why", "new name", "--by", "op1", "--pin-file", "-").Code);
        Refused(cli.RunWith("000999", "adopt", "--why", "new name", "--by", "eng1", "--pin-file", "-"), "that is not eng1's PIN");
        Done(cli.RunWith(Pin, "adopt", "--why", "new name", "--by", "eng1", "--pin-file", "-"));
        Assert.StartsWith("Four Alders", cli.Run("now").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_new_files_change_is_said_when_they_are_signed_and_to_whoever_comes_back()
    {
        using var cli = Signed("op1", "eng1");
        var points = File.ReadAllText(Path.Combine(cli.Folder, "points.csv"));
        cli.Write("points.csv", points.Replace(",,22,25,6,,lime-screw", ",,48,49,6,,lime-screw", StringComparison.Ordinal));

        var adopted = Done(cli.RunWith(Pin, "adopt", "--why", "spelling", "--by", "eng1", "--pin-file", "-"));

        Assert.Contains("LM-F1 watch high 22 -> 48 t/h", adopted.Out, StringComparison.Ordinal);
        Assert.Contains("LM-F1 urgent high 25 -> 49 t/h", adopted.Out, StringComparison.Ordinal);
        var back = string.Join(' ', Done(cli.Run("since", "op2")).Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("Site files put in force: spelling; LM-F1 watch high 22 -> 48 t/h", back, StringComparison.Ordinal);
    }

    private static Cli Signed(params string[] people)
    {
        var cli = new Cli();
        foreach (var code in people)
        {
            Done(cli.RunWith(Pin, "people", "pin", code, "--by", code, "--new-pin-file", "-"));
        }

        return cli;
    }

    private static string Open(Cli cli, string by) =>
        string.Concat(new[] { "hazards", "moving", "changed" }.Select(page => Done(cli.Run("handover", "open", page, "--by", by)).Out));

    private static Answer Prepare(Cli cli) => cli.RunWith(
        Pin,
        ["handover", "prepare", .. Declared.SelectMany(s => new[] { "--section", s + "=checked" }), "--if", "if the flow falls, then stop the lime", "--word", "bowl may climb", "--by", "op1", "--pin-file", "-"]);

    /// <summary>Takes over with the right answer: the choice that the isolation's own record gives.</summary>
    private static Answer Accept(Cli cli, string pin)
    {
        var answers = cli.Run("handover", "question", "--by", "op3", "--json").Json.GetProperty("questions").EnumerateArray()
            .Select(q => q.GetProperty("choices").EnumerateArray().Select(c => c.GetString()).ToList())
            .Select(choices => $"{choices.FindIndex(c => c is "4417" or "2" || c!.Contains("pump", StringComparison.OrdinalIgnoreCase)) + 1}");
        return cli.RunWith(pin, ["handover", "accept", "--first", "pump first", .. answers.SelectMany(a => new[] { "--answer", a }), "--by", "op3", "--pin-file", "-"]);
    }

    private static string ShiftCrew(Cli cli) => cli.Run("now").Out.Split('\n')[0].TrimEnd()[^1..];

    private static Answer Done(Answer answer)
    {
        Assert.True(answer.Code == 0, answer.Error);
        return answer;
    }

    private static void Refused(Answer answer, string rule)
    {
        Assert.Equal(3, answer.Code);
        Assert.Contains(rule, Assert.Single(answer.Lines), StringComparison.Ordinal);
    }
}
