using System.Globalization;
using CsCheck;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

/// <summary>What holds for every entry, whatever is typed.</summary>
public sealed class EntryProperties
{
    private static readonly string[] Bad = ["1,234", "1.2.3", "--", "nan", "\u221e", "", "12 furlong"];

    private static Gen<string> Number(string tag, double low, double high, int decimals) =>
        Gen.Double[low, high].Select(v => tag + "=" + v.ToString("F" + decimals, CultureInfo.InvariantCulture));

    private static readonly Gen<string[]> Readings =
        Gen.Select(Number("SL-T1", 90, 112, 1), Number("SL-F1", 0, 600, 0), Number("LM-F1", 0, 50, 2), Number("LM-CAO", 30, 100, 1), Gen.Int[1, 3].Select(d => $"SL-HATCH={d}"))
            .Select((a, b, c, d, e) => new[] { a, b, c, d, e });

    private static readonly Gen<string[]> Titration =
        Gen.Select(Number("WL-A", 0, 60, 2), Number("WL-B", 0, 60, 2), Number("WL-C", 0, 60, 2)).Select((a, b, c) => new[] { a, b, c });

    private static readonly Gen<string[]> Entries = Gen.Select(Readings, Titration).Select((a, b) => (string[])[.. a, .. b]);

    [Fact]
    public void The_order_of_readings_changes_neither_results_nor_findings()
    {
        Gen.Select(Entries, Entries, Gen.Shuffle(Enumerable.Range(0, 8).ToArray())).Sample((before, readings, order) =>
        {
            var line = new Line();
            line.Save(before);
            line.Later(1);
            string[] shuffled = [.. order.Select(i => readings[i])];

            var straight = RecordEntry.Judge(line.Desk, Some.Entry(readings)).Value!;
            var other = RecordEntry.Judge(line.Desk, Some.Entry(shuffled)).Value!;

            Assert.Equal(straight.Results, other.Results);
            Assert.Equal(straight.Findings.Select(f => (f.Level, f.Code, f.Point, f.Text)), other.Findings.Select(f => (f.Level, f.Code, f.Point, f.Text)));
        }, iter: 100);
    }

    [Fact]
    public void What_was_typed_is_kept_and_a_saved_entry_comes_back_as_it_was()
    {
        Entries.Sample(readings =>
        {
            var line = new Line();
            var saved = line.Save(readings);

            Assert.Equal(readings, saved.Readings.Select(r => $"{r.Point}={r.Typed}"), StringComparer.Ordinal);
            var back = Assert.IsType<Entry>(JournalRecord.Parse(line.Journal.Read().Last().Bytes).Body);
            Assert.Equal(saved.Readings, back.Readings);
            Assert.Equal(saved.Results, back.Results);
            Assert.Equal(saved.Findings.Select(f => (f.Text, string.Join('\n', f.Evidence))), back.Findings.Select(f => (f.Text, string.Join('\n', f.Evidence))));
        }, iter: 100);
    }

    [Fact]
    public void Judging_writes_nothing()
    {
        Entries.Sample(readings =>
        {
            var line = new Line();
            var judged = RecordEntry.Judge(line.Desk, Some.Entry(readings)).Value!;
            Assert.Equal(Head.Empty, line.Journal.Head);
            Assert.Equal(judged.Results, line.Save(readings).Results);
        }, iter: 50);
    }

    [Fact]
    public void An_entry_with_one_bad_reading_saves_nothing_and_names_that_one()
    {
        Gen.Select(Entries, Gen.Int[0, 7], Gen.OneOf([.. Bad.Select(Gen.Const)])).Sample((readings, at, bad) =>
        {
            readings[at] = readings[at][..(readings[at].IndexOf('=', StringComparison.Ordinal) + 1)] + bad;

            var mistake = Assert.Single(new Line().Refused(Some.Entry(readings)));

            Assert.StartsWith(readings[at].Split('=')[0], mistake.Wrong, StringComparison.Ordinal);
            Assert.DoesNotContain('\n', mistake.ToString());
        }, iter: 200);
    }
}
