using Logbook.Journal;
using Logbook.Plant;
using Logbook.Storage.LiteDb;

namespace Logbook.Tests;

/// <summary>A state beside the records, made by hand as the program makes them, in which an operator is an engineer.</summary>
public sealed class RightsFollowFromTheRecords : IDisposable
{
    private const string Pin = "270451";

    private readonly Cli _cli = new();

    public RightsFollowFromTheRecords()
    {
        Assert.Equal(0, _cli.RunWith(Pin, "people", "pin", "op1", "--by", "op1", "--new-pin-file", "-").Code);
        Assert.Equal(0, _cli.RunWith(Pin, "people", "pin", "eng1", "--by", "eng1", "--new-pin-file", "-").Code);
        var plugin = Directory.CreateDirectory(Path.Combine(_cli.Folder, "plugins", "WashRatio")).FullName;
        foreach (var file in (string[])["WashRatio.dll", "WashRatio.deps.json"])
        {
            File.Copy(Path.Combine(AppContext.BaseDirectory.Replace(Path.Combine("tests", "Logbook.Tests"), Path.Combine("tests", "Fixtures", "WashRatio"), StringComparison.Ordinal), file), Path.Combine(plugin, file));
        }

        Edit("[site]\n", "# another hand\n[site]\n");
        Forge();
    }

    public void Dispose() => _cli.Dispose();

    [Theory]
    [InlineData("adopt", "--why", "mine")]
    [InlineData("plugins", "trust", "WashRatio", "--why", "mine")]
    [InlineData("people", "close", "op2", "--why", "mine")]
    [InlineData("people", "pin", "op2", "--new-pin-file", "-")]
    public void An_operator_whom_a_kept_state_calls_an_engineer_changes_nobodys_rights(params string[] command)
    {
        var before = Head();
        var pin = _cli.Write("pin", Pin);

        var answer = _cli.RunWith("another-270", [.. command, "--by", "op1", "--pin-file", pin]);

        Assert.Equal((3, before), (answer.Code, Head()));
        Assert.Contains($"journal/states/{before}.json does not follow from the records", answer.Lines[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_kept_state_the_records_rule()
    {
        Directory.Delete(Path.Combine(_cli.Folder, "journal", "states"), recursive: true);
        var pin = _cli.Write("pin", Pin);

        Assert.Equal(2, _cli.Run("adopt", "--why", "mine", "--by", "op1", "--pin-file", pin).Code);
        Assert.Equal(0, _cli.Run("adopt", "--why", "looked at", "--by", "eng1", "--pin-file", pin).Code);
    }

    // Verification stops at the state that was forged.
    private long Head()
    {
        using var journal = new LiteDbJournal(_cli.Folder, "test:2", _cli.Clock);
        return journal.Head.Seq;
    }

    private void Forge()
    {
        using var journal = new LiteDbJournal(_cli.Folder, "test:2", _cli.Clock);
        var state = Replay.Forward(journal, State.Empty);
        var texts = state.Files!.Texts.ToDictionary(t => t.Key, t => t.Key == SiteFiles.SiteToml ? t.Value.Replace("role = \"operator\"", "role = \"engineer\"", StringComparison.Ordinal) : t.Value, StringComparer.Ordinal);
        var forged = state with { Files = new SiteFiles(texts) };
        Assert.Equal(Role.Engineer, SiteReader.Read(forged.Files).Value!.FindPerson("op1")!.Role);
        journal.Keep(forged);
    }

    private void Edit(string from, string to)
    {
        var path = Path.Combine(_cli.Folder, SiteFiles.SiteToml);
        var text = File.ReadAllText(path);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(from, to, StringComparison.Ordinal));
    }
}
