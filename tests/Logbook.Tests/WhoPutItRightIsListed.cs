namespace Logbook.Tests;

/// <summary>A list shows whose a corrected value is, and a named state by its name.</summary>
public sealed class WhoPutItRightIsListed
{
    [Fact]
    public void A_corrected_value_says_what_it_was_first_and_who_put_it_right_when()
    {
        using var cli = new Cli();
        var seq = cli.Run("record", "SL-T1=112.1", "--by", "op1", "--json").Json.GetProperty("seq").GetInt64();
        cli.Clock.Advance(TimeSpan.FromMinutes(20));
        Assert.Equal(0, cli.Run("correct", $"{seq}", "SL-T1=102.1", "--why", "digits swapped", "--by", "op2").Code);

        var text = cli.Run("list", "SL-T1").Out;
        var row = cli.Run("list", "SL-T1", "--json").Json.GetProperty("list")[0];

        Assert.Contains("put right", text.Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains("first 112.1 degC; put right by Operator two Wed 25 Nov 10:20", text, StringComparison.Ordinal);
        Assert.Equal((102.1, 112.1), (row.GetProperty("value").GetDouble(), row.GetProperty("first").GetDouble()));
        Assert.Contains("put right by Operator two 10:20", cli.Run("log").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_never_put_right_says_nothing_of_it()
    {
        using var cli = new Cli();
        cli.Run("record", "SL-T1=101.2", "--by", "op1");

        Assert.DoesNotContain("put right", cli.Run("list", "SL-T1").Out, StringComparison.Ordinal);
        Assert.False(cli.Run("list", "SL-T1", "--json").Json.GetProperty("list")[0].TryGetProperty("first", out _));
    }

    [Fact]
    public void A_named_state_is_listed_by_its_name_also_what_it_was_first()
    {
        using var cli = new Cli();
        var seq = cli.Run("record", "RG-LEAK=4", "--by", "op1", "--json").Json.GetProperty("seq").GetInt64();
        cli.Run("correct", $"{seq}", "RG-LEAK=1", "--why", "another pump", "--by", "op2");

        var row = cli.Run("list", "RG-LEAK", "--json").Json.GetProperty("list")[0];

        Assert.Equal("dry", row.GetProperty("words").GetString());
        Assert.StartsWith("first running or spraying; put right by Operator two", row.GetProperty("put_right").GetString(), StringComparison.Ordinal);
        Assert.Contains(" dry ", cli.Run("list", "RG-LEAK").Out, StringComparison.Ordinal);
        Assert.Contains("running or spraying", cli.Run("log").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_countersignature_without_words_is_refused_by_the_name_of_its_option_and_an_example_that_is_accepted()
    {
        using var cli = new Cli();
        cli.Run("record", "SL-T1=101.2", "--by", "op1");

        var refused = cli.RunWith("274951", "handover", "countersign", "--by", "sup1", "--pin-file", "-");

        Assert.Equal(2, refused.Code);
        Assert.Contains("what was found is empty", refused.Error, StringComparison.Ordinal);
        Assert.Contains("--why \"walked it with the crew, nothing left open\"", refused.Error, StringComparison.Ordinal);
    }
}
