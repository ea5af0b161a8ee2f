namespace Logbook.Tests;

/// <summary>What the audit says of one person's walks goes to that person, on a terminal, under a policy; and nowhere else.</summary>
public sealed class OwnIsShownOnATerminalAlone
{
    private const string Pin = "274951";

    private const string Policy = """

        [policy]
        purpose = "to mend rounds that are too long"
        readers = ["sup1"]
        retention = "answers stay as long as the log"
        consultation = "agreed with the crews"
        """;

    [Fact]
    public void Without_a_policy_it_is_off()
    {
        using var cli = new Cli { Answers = true };
        cli.RunWith(Pin, "people", "pin", "op1", "--by", "op1", "--new-pin-file", "-");

        var answer = cli.RunWith(Pin, "own", "--by", "op1", "--pin-file", "-");

        Assert.Equal(3, answer.Code);
        Assert.Contains("cites no policy", Assert.Single(answer.Lines), StringComparison.Ordinal);
    }

    [Fact]
    public void With_one_it_is_shown_after_eight_weeks_on_a_terminal_and_in_no_other_way()
    {
        using var cli = new Cli { Answers = true };
        File.AppendAllText(Path.Combine(cli.Folder, "site.toml"), Policy);
        foreach (var code in new[] { "op1", "sup1" })
        {
            Assert.Equal(0, cli.RunWith(Pin, "people", "pin", code, "--by", code, "--new-pin-file", "-").Code);
        }

        Assert.Contains("eight weeks of walks are whole", cli.RunWith(Pin, "own", "--by", "op1", "--pin-file", "-").Error, StringComparison.Ordinal);
        cli.Clock.Advance(TimeSpan.FromDays(57));

        var shown = cli.RunWith(Pin, "own", "--by", "op1", "--pin-file", "-");
        Assert.True(shown.Code == 0, shown.Error);
        Assert.Contains("to mend rounds that are too long", shown.Out, StringComparison.Ordinal);
        Assert.Contains("66 are honest", shown.Out, StringComparison.Ordinal);
        Assert.Equal(3, cli.RunWith(Pin, "own", "--by", "op1", "--pin-file", "-", "--json").Code);
        Assert.Contains("has not looked and answered", cli.RunWith(Pin, "own", "--of", "op1", "--why", "asked", "--by", "sup1", "--pin-file", "-").Error, StringComparison.Ordinal);
        Assert.Equal(0, cli.RunWith(Pin, "own", "answer", "nothing to add", "--by", "op1", "--pin-file", "-").Code);
        Assert.Contains("nothing to add", cli.RunWith(Pin, "own", "--of", "op1", "--why", "asked", "--by", "sup1", "--pin-file", "-").Out, StringComparison.Ordinal);
        Assert.Contains("looked at: asked", cli.Run("log").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Into_a_file_or_another_program_it_does_not_go()
    {
        using var cli = new Cli();

        var answer = cli.RunWith(Pin, "own", "--by", "op1", "--pin-file", "-");

        Assert.Equal(3, answer.Code);
        Assert.Contains("on a terminal alone", Assert.Single(answer.Lines), StringComparison.Ordinal);
    }
}
