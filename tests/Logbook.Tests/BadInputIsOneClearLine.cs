using Logbook.Storage.LiteDb;

namespace Logbook.Tests;

public sealed class BadInputIsOneClearLine : IDisposable
{
    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [Theory]
    [InlineData("SL-T9=100", "SL-T9", "SL-T1")]
    [InlineData("SL-T1=abc", "abc", "number")]
    [InlineData("SL-F1=1,234", "1,234", "1234")]
    [InlineData("SL-T1=1.234,5", "1.234,5", "")]
    [InlineData("SL-T1=101 kPa", "kPa", "degC")]
    [InlineData("SL-T1=101 foo", "unit 'foo' is unknown", "accepted: degC, degF")]
    [InlineData("SL-T1=101 m", "m cannot be turned into degC", "accepted: degC, degF")]
    [InlineData("SL-T1=1e400", "'1e400' is no number", "as in 103.4")]
    [InlineData("SL-T1=1e2 degC", "'1e2 degC' is no number", "as in 103.4")]
    [InlineData("SL-T1=-1E-400", "'-1E-400' is no number", "as in 103.4")]
    [InlineData("SL-T1=300", "300", "reason")]
    [InlineData("SL-HATCH=9", "9", "1")]
    [InlineData("SL-T1=-", "SL-T1", "reason")]
    [InlineData("SL-T1", "SL-T1", "POINT=VALUE")]
    public void A_reading_that_cannot_be_used_is_refused_and_nothing_is_saved(string reading, string wrong, string accepted)
    {
        var answer = _cli.Run("record", reading, "LM-F1=18.6", "--by", "op1");

        Assert.Equal(2, answer.Code);
        var line = Assert.Single(answer.Lines);
        Assert.Contains(wrong, line, StringComparison.Ordinal);
        Assert.Contains(accepted, line, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Records);
    }

    [Fact]
    public void A_choice_that_a_command_does_not_have_is_one_line_with_those_that_it_has()
    {
        var answer = _cli.Run("handover", "draft", "--template", "week");

        Assert.Equal(2, answer.Code);
        Assert.EndsWith("Must be one of: 'handover' 'long' See: logbook handover draft --help", Assert.Single(answer.Lines), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_a_number_is_meant_no_type_of_the_language_is_named()
    {
        var answer = _cli.Run("log", "--about", "gas");

        Assert.Equal(2, answer.Code);
        Assert.Equal("Cannot parse argument 'gas' for option '--about' as a whole number. See: logbook log --help", Assert.Single(answer.Lines));
    }

    [Theory]
    [InlineData("--folder", "try something on the past; give --replay with them")]
    [InlineData("--replay --folder", "not fitted yet")]
    [InlineData("--replay --learned-from 2026-11-20 --learned-to 2026-11-24", "0 entries in this span have readings that are compared; 150 at least")]
    [InlineData("--replay --learned-from soon", "--learned-from: 'soon'")]
    public void What_is_tried_on_the_past_is_tried_whole_or_not_at_all(string typed, string wrong)
    {
        var answer = _cli.Run(["examine", .. typed.Split(' ')]);

        Assert.Equal(2, answer.Code);
        Assert.Contains(wrong, Assert.Single(answer.Lines), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-11-25T12:00", "future")]
    [InlineData("2026-11-01T01:30", "2026-11-01T01:30:00-05:00")]
    [InlineData("2026-03-08T02:30", "2026-03-08")]
    [InlineData("yesterday", "yesterday")]
    public void A_time_that_cannot_be_used_is_refused_and_nothing_is_saved(string at, string says)
    {
        var answer = _cli.Run("record", "SL-T1=101", "--at", at, "--by", "op1");

        Assert.Equal(2, answer.Code);
        Assert.Contains(says, Assert.Single(answer.Lines), StringComparison.Ordinal);
        Assert.Equal(0, _cli.Records);
    }

    [Theory]
    [InlineData("", "rows.csv:1:1", "empty")]
    [InlineData("point,value,unit\nSL-T1,101.2\n", "rows.csv:2:1", "2 fields")]
    [InlineData("SL-T1,101.2\n", "rows.csv:1:1", "header")]
    [InlineData("point;value;unit\nSL-T1;101,2;degC\n", "rows.csv:1:1: the columns are separated by semicolons; commas between the columns", "a value with a comma in it stands in \"...\"")]
    [InlineData("Value\tPoint\n101.2\tSL-T1\n", "rows.csv:1:1: the columns are separated by tabs", "commas")]
    [InlineData("point,value\n", "rows.csv:2:1", "no reading")]
    [InlineData("point,value\nSL-F1,300\nSL-T1,hot\n", "rows.csv:3:", "hot")]
    [InlineData("point,value,at\nSL-F1,300,2027-01-01T00:00\n", "rows.csv:2:", "future")]
    public void A_file_that_cannot_be_used_is_refused_with_its_line_and_nothing_is_saved(string text, string place, string says)
    {
        _cli.Write("rows.csv", text);

        var answer = _cli.Run("record", "--file", "rows.csv", "--by", "op1");

        Assert.Equal(2, answer.Code);
        var line = Assert.Single(answer.Lines);
        Assert.StartsWith(place, line, StringComparison.Ordinal);
        Assert.Contains(says, line, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Records);
    }

    [Theory]
    [InlineData("record", "SL-T1=101")]
    [InlineData("remark", "all quiet")]
    [InlineData("handover", "open", "hazards")]
    [InlineData("people", "pin", "op1")]
    [InlineData("remark", "all quiet", "--by", " ")]
    public void Who_writes_has_to_be_said(params string[] command)
    {
        var answer = _cli.Run(command);

        Assert.Equal(2, answer.Code);
        Assert.StartsWith("it is not said who writes this; --by CODE with one of: op1, op2, ", Assert.Single(answer.Lines), StringComparison.Ordinal);
        Assert.Equal(0, _cli.Records);
    }

    [Theory]
    [InlineData("backup", "journal/copy")]
    [InlineData("backup", "journal/a/b")]
    [InlineData("init", "journal/site")]
    [InlineData("demo", "--days", "1", "--no-screen", "--in", "journal/demo")]
    public void Nothing_is_made_among_the_journals_own_files(params string[] command)
    {
        _cli.Run("record", "SL-F1=300", "--by", "op1");
        var before = Directory.GetFileSystemEntries(Path.Combine(_cli.Folder, "journal"));

        var answer = _cli.Run(command);

        Assert.Equal(2, answer.Code);
        Assert.EndsWith("would lie among the journal's own files; a place outside the journal's folder", Assert.Single(answer.Lines), StringComparison.Ordinal);
        Assert.Equal(before, Directory.GetFileSystemEntries(Path.Combine(_cli.Folder, "journal")));
    }

    [Theory]
    [InlineData("-1")]
    [InlineData("0")]
    [InlineData("3")]
    public void A_record_that_is_not_there_is_about_nothing(string seq)
    {
        _cli.Run("record", "SL-F1=300", "--by", "op1");

        var answer = _cli.Run("log", "--about", seq);

        Assert.Equal((2, $"there is no record {seq}; 1 to 2"), (answer.Code, Assert.Single(answer.Lines)));
        Assert.Equal(0, _cli.Run("log", "--about", "2").Code);
    }

    [Theory]
    [InlineData("now")]
    [InlineData("due")]
    [InlineData("audit", "--flag", "missed")]
    public void Nothing_is_missed_before_its_time(params string[] command)
    {
        _cli.Run("record", "SL-F1=300", "--by", "op1");

        var late = _cli.Run([.. command, "--as-of", "2026-11-25T20:00"]);
        Assert.Equal((2, "--as-of, 2026-11-25 20:00, lies in the future; it is 2026-11-25 10:00 now"), (late.Code, Assert.Single(late.Lines)));
        Assert.Equal(2, _cli.Run([.. command, "--as-of", "2026-11-26"]).Code);

        // Today is a day that may be named: it goes as far as now.
        var today = _cli.Run([.. command, "--as-of", "2026-11-25"]);
        Assert.Equal((0, _cli.Run(command).Out), (today.Code, today.Out));
    }

    [Fact]
    public void What_was_unsafe_to_reach_says_that_an_action_is_open_and_json_says_nothing_more()
    {
        var said = _cli.Run("record", "SL-T1=-", "--why", "SL-T1=unsafe to reach: steam", "--by", "op1");
        Assert.EndsWith("open 2: action, Slaker: unsafe to reach (steam), make it safe to read: SL-T1; it stands in the note until it is closed\n", said.Out, StringComparison.Ordinal);

        var machine = _cli.Run("record", "SL-F1=-", "--why", "SL-F1=unsafe to reach", "--by", "op1", "--json");
        Assert.Equal(3, machine.Json.GetProperty("seq").GetInt32());
    }

    [Fact]
    public void Every_mistake_of_an_entry_is_said_at_once()
    {
        var answer = _cli.Run("record", "SL-T9=100", "SL-F1=x", "SL-T1=900", "--by", "nobody");

        Assert.Equal(2, answer.Code);
        Assert.Equal(4, answer.Lines.Length);
    }

    [Fact]
    public void A_comma_is_a_decimal_comma_where_it_can_mean_nothing_else()
    {
        var answer = _cli.Run("record", "SL-T1=101,2", "--by", "op1", "--json");

        Assert.Equal(0, answer.Code);
        Assert.Contains("\"value\":101.2", _cli.Run("list", "SL-T1", "--json").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Alkali_without_its_basis_is_refused_with_the_accepted_units()
    {
        var answer = _cli.Run("calc", "run", "boiling-margin", "slaker-temperature=101", "tta=120 g/L");

        Assert.Equal(2, answer.Code);
        Assert.Contains("g/L Na2O", Assert.Single(answer.Lines), StringComparison.Ordinal);
    }

    [Fact]
    public void End_points_out_of_order_are_refused_by_hand_and_a_finding_in_an_entry()
    {
        var byHand = _cli.Run("calc", "run", "causticity", "a=34", "b=29", "c=39");
        var entry = _cli.Run("record", "WL-A=34", "WL-B=29", "WL-C=39", "--by", "op1", "--json");

        Assert.Equal(2, byHand.Code);
        Assert.Single(byHand.Lines);
        Assert.Equal(0, entry.Code);
        Assert.Contains("calculation.order", entry.Out, StringComparison.Ordinal);
        Assert.Contains("\"value\":34", _cli.Run("list", "WL-A", "--json").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_outside_the_possible_range_stands_with_a_reason()
    {
        var answer = _cli.Run("record", "SL-T1=120", "--why", "SL-T1=thermometer out of its well", "--by", "op1");

        Assert.Equal(0, answer.Code);
        Assert.Contains("thermometer out of its well", _cli.Run("list", "SL-T1", "--json").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("record")]
    [InlineData("record", "--by", "op1")]
    [InlineData("record", "SL-T1=101")]
    [InlineData("record", "SL-T1=101", "--by", "op99")]
    [InlineData("record", "SL-T1=101", "--by", "op1", "--round", "hurly")]
    [InlineData("record", "--file", "gone.csv", "--by", "op1")]
    [InlineData("correct", "1", "SL-T1=101", "--why", "slip", "--by", "op1")]
    [InlineData("carry", "add", "--kind", "rumour", "--on", "slaker", "--text", "t", "--by", "op1")]
    [InlineData("carry", "close", "7", "--why", "done", "--by", "op1")]
    [InlineData("state", "slaker", "flying", "--by", "op1")]
    [InlineData("state", "slakr", "running", "--by", "op1")]
    [InlineData("adopt", "--why", "x", "--by", "op1")]
    [InlineData("list", "SL-T9")]
    [InlineData("audit", "--flag", "lazy")]
    [InlineData("calc", "run", "lime-fed")]
    [InlineData("calc", "run", "lime-feed", "lime=much", "available-cao=88", "flow=300")]
    [InlineData("handover", "show", "2026-11-24-X-Z")]
    [InlineData("handover", "draft", "--format", "pdf")]
    [InlineData("due", "--from", "then")]
    [InlineData("dew")]
    [InlineData("record", "--colour", "red")]
    public void A_command_that_cannot_be_done_says_so_in_one_line(params string[] command)
    {
        var answer = _cli.Run(command);

        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Lines);
        Assert.DoesNotContain("   at ", answer.Error, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Records);
    }

    [Fact]
    public void A_folder_without_a_site_is_said_to_be_none()
    {
        var empty = Directory.CreateDirectory(Path.Combine(_cli.Folder, "empty")).FullName;

        var answer = _cli.Run("now", "--site", empty);

        Assert.Equal(2, answer.Code);
        Assert.Contains("site.toml", answer.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(empty));
    }

    [Fact]
    public void A_writer_that_cannot_get_its_turn_is_told_who_has_it()
    {
        _cli.Run("record", "SL-F1=300", "--by", "op1");
        using var other = new LiteDbJournal(_cli.Folder, "panel:tty7", _cli.Clock);
        var last = other.Read().Last();
        other.Append(new(last.Body, last.Chain, last.At, last.Entered, last.Shift, last.By, "panel:tty7"));

        var answer = _cli.Run("record", "SL-F1=301", "--by", "op1", "--wait", "0.1");

        Assert.Equal(4, answer.Code);
        Assert.Contains("panel:tty7", Assert.Single(answer.Lines), StringComparison.Ordinal);
    }
}
