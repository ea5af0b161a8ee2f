namespace Logbook.Tests;

public sealed class ALostEndIsSaid : IDisposable
{
    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [Theory]
    [InlineData("now")]
    [InlineData("handover", "draft")]
    [InlineData("carry", "list")]
    public void Every_reading_command_warns_when_the_newest_records_are_gone(params string[] command)
    {
        _cli.Run("record", "SL-F1=300", "--by", "op1");
        File.WriteAllText(Path.Combine(_cli.Folder, "journal", "anchor"), $"9 {new string('a', 64)}\n");

        var answer = _cli.Run(command);

        Assert.Equal(4, answer.Code);
        Assert.Contains("9 records had been noted", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_journal_without_its_noted_end_is_read_with_a_warning()
    {
        _cli.Run("record", "SL-F1=300", "--by", "op1");
        File.Delete(Path.Combine(_cli.Folder, "journal", "anchor"));

        var answer = _cli.Run("now");

        Assert.Equal(0, answer.Code);
        Assert.Contains("anchor is missing", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_without_end_are_refused_before_they_reach_the_note()
    {
        var answer = _cli.Run("remark", new string('x', 100_000), "--by", "op1");

        Assert.Equal(2, answer.Code);
        Assert.True(Assert.Single(answer.Lines).Length < 1000);
        Assert.Equal(0, _cli.Records);
    }

    [Fact]
    public void What_the_site_file_says_cannot_steer_the_terminal()
    {
        var site = Path.Combine(_cli.Folder, "site.toml");
        File.WriteAllText(site, File.ReadAllText(site).Replace("Three Alders", "Evil \\u001b[31m", StringComparison.Ordinal));

        var answer = _cli.Run("check");

        Assert.Equal(0, answer.Code);
        Assert.DoesNotContain('\u001b', answer.Out);
    }

    [Fact]
    public void A_head_from_a_printed_note_is_found_again_or_missed()
    {
        var head = _cli.Run("record", "SL-F1=300", "--by", "op1", "--json").Json.GetProperty("head").GetString()!;
        _cli.Run("record", "SL-F1=301", "--by", "op1");

        Assert.Equal(0, _cli.Run("verify", "--head", head[..16]).Code);
        Assert.Equal(5, _cli.Run("verify", "--head", new string('0', 64)).Code);
        Assert.Equal(2, _cli.Run("verify", "--head", "abc").Code);
    }
}
