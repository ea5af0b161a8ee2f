namespace Logbook.Tests;

public sealed class WhatIsWrittenOutIsANewFile : IDisposable
{
    private readonly Cli _cli = new();

    public WhatIsWrittenOutIsANewFile() => _cli.Run("record", "SL-F1=300", "--by", "op1");

    public void Dispose() => _cli.Dispose();

    public static TheoryData<string> Commands => ["export --format csv", "export --format jsonl", "handover draft", "round print hourly"];

    [Theory]
    [MemberData(nameof(Commands))]
    public void It_never_takes_the_place_of_a_file(string command)
    {
        foreach (var file in (string[])["journal/records.db", "site.toml"])
        {
            var before = File.ReadAllBytes(In(file));

            var answer = _cli.Run([.. command.Split(' '), "--out", file]);

            Assert.Equal(2, answer.Code);
            Assert.Contains("is there already", Assert.Single(answer.Lines), StringComparison.Ordinal);
            Assert.Equal(before, File.ReadAllBytes(In(file)));
        }
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void It_never_lies_in_the_journals_folder(string command)
    {
        Directory.CreateDirectory(In("journal/states"));
        Directory.CreateSymbolicLink(In("by-a-link"), In("journal/states"));
        foreach (var file in (string[])["journal/new", "journal/states/9.json", "by-a-link/9.json"])
        {
            var answer = _cli.Run([.. command.Split(' '), "--out", file]);

            Assert.Equal(2, answer.Code);
            Assert.Contains("among the journal's own files", Assert.Single(answer.Lines), StringComparison.Ordinal);
            Assert.False(File.Exists(In(file)));
        }
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void A_new_file_is_written_whole(string command)
    {
        Assert.Equal(0, _cli.Run([.. command.Split(' '), "--out", "new"]).Code);

        Assert.Equal(_cli.Run(command.Split(' ')).Out, File.ReadAllText(In("new")));
        Assert.Equal([In("new")], Directory.GetFiles(_cli.Folder, "new*"));
    }

    private string In(string file) => Path.Combine(_cli.Folder, file);
}
