namespace Logbook.Tests;

/// <summary>The program without a command, in a folder that holds no site.</summary>
public sealed class TheFirstTimeIsNeverABlankScreen : IDisposable
{
    private readonly Cli _cli = new() { Answers = true };
    private readonly string _empty;

    public TheFirstTimeIsNeverABlankScreen() => _empty = Path.Combine(_cli.Folder, "elsewhere");

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void The_demo_and_a_new_site_are_offered_and_a_new_site_is_made()
    {
        var answer = _cli.RunWith("x\n2\n", "--site", _empty);

        Assert.Equal(0, answer.Code);
        Assert.Contains("There is no site in", answer.Out, StringComparison.Ordinal);
        Assert.Contains("1  try it", answer.Out, StringComparison.Ordinal);
        Assert.Contains("'x' is none of them", answer.Out, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_empty, "site.toml")));
        Assert.Equal(0, _cli.Run("check", "--site", _empty).Code);
    }

    [Theory]
    [InlineData("3\n")]
    [InlineData("")]
    public void Who_wants_neither_gets_one_line_and_nothing_is_made(string input)
    {
        var answer = _cli.RunWith(input, "--site", _empty);

        Assert.Equal(2, answer.Code);
        Assert.Contains("holds no site.toml", Assert.Single(answer.Lines), StringComparison.Ordinal);
        Assert.False(Directory.Exists(_empty));
    }

    [Fact]
    public void Without_a_person_to_answer_nothing_is_asked()
    {
        using var script = new Cli();

        var answer = script.RunWith("2\n", "--site", _empty);

        Assert.Equal((2, ""), (answer.Code, answer.Out));
        Assert.False(Directory.Exists(_empty));
    }
}
