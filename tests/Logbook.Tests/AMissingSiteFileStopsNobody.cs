using System.Diagnostics;

namespace Logbook.Tests;

/// <summary>The files in force are in the journal: one that is missing from the folder is a changed one.</summary>
public sealed class AMissingSiteFileStopsNobody : IDisposable
{
    private readonly Cli _cli = new();

    public AMissingSiteFileStopsNobody() => _cli.Run("record", "SL-F1=300", "--by", "op1");

    public void Dispose() => _cli.Dispose();

    public static TheoryData<string, string> Lost => new()
    {
        { "cautions.toml", "gone" }, { "cautions.toml", "a folder" }, { "site.toml", "gone" }, { "points.csv", "a folder" },
    };

    [Theory]
    [MemberData(nameof(Lost))]
    public void The_line_goes_on_with_the_files_in_force_and_is_told(string file, string how)
    {
        Lose(file, how);
        string[][] commands = [["now"], ["record", "SL-F1=301", "--by", "op1"], ["handover", "draft"], ["handover", "relief", "--emergency", "--why", "1", "--by", "op2"]];
        foreach (var command in commands)
        {
            var answer = _cli.Run(command);

            Assert.True(answer.Code == 0, $"{command[0]}: {answer.Code} {answer.Error}");
            Assert.Contains(answer.Lines, line => line.Contains($"WARNING: {file}: ", StringComparison.Ordinal) && line.Contains("the file in force is used", StringComparison.Ordinal));
        }

        Assert.Contains("SL-F1", _cli.Run("log").Out, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Lost))]
    public void What_is_put_in_force_must_be_whole(string file, string how)
    {
        Lose(file, how);
        string[][] commands = [["check"], ["adopt", "--why", "a test", "--by", "eng1"]];
        foreach (var command in commands)
        {
            var answer = _cli.Run(command);

            Assert.Equal(2, answer.Code);
            Assert.Contains(answer.Lines, line => line.StartsWith($"{file}: ", StringComparison.Ordinal));
        }
    }

    [NeedsTool("mkfifo")]
    public void A_pipe_in_its_place_is_not_waited_for_without_end()
    {
        Lose("cautions.toml", "gone");
        using (var made = Process.Start("mkfifo", Path.Combine(_cli.Folder, "cautions.toml")))
        {
            made.WaitForExit();
        }

        var answer = _cli.Run("now");

        Assert.Equal(0, answer.Code);
        Assert.Contains("WARNING: cautions.toml: cannot be read", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_never_had_a_journal_needs_its_files()
    {
        using var fresh = new Cli();
        File.Delete(Path.Combine(fresh.Folder, "cautions.toml"));

        var answer = fresh.Run("now");

        Assert.Equal(2, answer.Code);
        Assert.StartsWith("cautions.toml: is not in ", Assert.Single(answer.Lines), StringComparison.Ordinal);
    }

    private void Lose(string file, string how)
    {
        var path = Path.Combine(_cli.Folder, file);
        File.Delete(path);
        if (how == "a folder")
        {
            Directory.CreateDirectory(path);
        }
    }
}
