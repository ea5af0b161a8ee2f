using System.Text.Json;
using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Logbook.Tests;

/// <summary>Processes of the built program that write into one journal at the same time, in turns that they find by themselves.</summary>
public sealed class TwoTypeAtOnce : IDisposable
{
    private const int Hours = 60;
    private const int Entries = 5;

    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public async Task No_reading_is_lost_and_the_chain_holds()
    {
        RealProgram.Run(_cli.Folder, "record", "SL-F1=300", "--by", "op1"); // puts the files in force, once
        _cli.Write("past.csv", AKillLosesNothing.Past(Hours));

        using var importing = RealProgram.Start(_cli.Folder, "import", Path.Combine(_cli.Folder, "past.csv"), "--by", "op1", "--wait", "120");
        var typed = await Task.WhenAll(Task.Run(() => Type("op1", 1)), Task.Run(() => Type("op2", 2)));
        var imported = importing.WaitForEnd();

        Assert.Equal((0, ""), (imported.Code, imported.Error));
        using var journal = new LiteDbJournal(_cli.Folder, "afterwards", TimeProvider.System);
        Assert.True(journal.Verify().Ok, journal.Verify().Why);
        var records = journal.Read().ToDictionary(r => r.Seq);
        Assert.All(typed.SelectMany(t => t), saved =>
        {
            Assert.Equal(saved.Head, records[saved.Seq].Hash);
            Assert.Equal(saved.Value, Assert.Single(((Entry)records[saved.Seq].Body).Readings).Typed);
        });
        Assert.Equal(Hours, records.Values.Count(r => r.Body is Entry { Imported: not null }));
        Assert.Equal(1 + Hours + (2 * Entries), records.Values.Count(r => r.Body is Entry));
    }

    private List<(long Seq, string Head, string Value)> Type(string by, int first)
    {
        var saved = new List<(long, string, string)>();
        for (var i = 0; i < Entries; i++)
        {
            var value = FormattableString.Invariant($"{290 + first + (2 * i)}");
            var (code, answer, error) = RealProgram.Run(_cli.Folder, "record", $"SL-F1={value}", "--by", by, "--json", "--wait", "120");
            Assert.True(code == 0, error);
            var json = JsonDocument.Parse(answer).RootElement;
            saved.Add((json.GetProperty("seq").GetInt64(), json.GetProperty("head").GetString()!, value));
        }

        return saved;
    }
}
