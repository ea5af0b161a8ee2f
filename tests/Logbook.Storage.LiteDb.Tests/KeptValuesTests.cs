using CsCheck;
using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Storage.LiteDb.Values;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>Values kept beside the records: a shorter way to a chart over years, and never anything else.</summary>
public sealed class KeptValuesTests : IDisposable
{
    private const int Records = 700;
    private static readonly DateTimeOffset Beginning = Drafts.Morning.AddYears(-1);
    private static readonly DateTimeOffset End = Drafts.Morning.AddYears(1);

    private readonly TemporarySite _site = new();

    public KeptValuesTests()
    {
        // Days of entries on two points, some late, some not taken; corrections of old and of new ones, some to another time.
        using var journal = _site.Open();
        var state = State.Empty;
        for (var i = 1; i <= Records; i++)
        {
            var at = Drafts.Morning.AddHours(i);
            var draft = (i % 50, i % 7) switch
            {
                (49, _) => Drafts.Of(new Correction(1 + (i * 37 % (i - 1)), Drafts.Read($"SL-T1={i}.5", at.AddHours(-i)), "misread", [Drafts.Derived("WL-CE", i)], []), at),
                (_, 0) => Drafts.Entry(at, "SL-T1=-"),
                (_, 1) => Drafts.Entry(at.AddHours(-30), $"SL-T1={i}.50", $"SL-F1={i}"),
                (_, 2) => Drafts.Of(new Remark("nothing", null, null), at),
                _ => Drafts.Entry(at) with { Body = new Entry { Readings = [Drafts.Read($"SL-T1={i}", at)], Results = [Drafts.Derived("WL-CE", i / 3.0)] } },
            };
            state = state.Apply(journal.Append(draft)).KeptNowAndThen(journal);
        }
    }

    public void Dispose() => _site.Dispose();

    [Fact] // one for all points: the disk takes seven hundred records first
    public void A_long_series_is_what_the_records_say()
    {
        var journal = _site.Open();

        foreach (var point in new[] { "SL-T1", "sl-f1", "WL-CE", "NONE" })
        {
            foreach (var (from, to, upTo) in new[] { (Beginning, End, long.MaxValue), (Drafts.Morning.AddDays(2), Drafts.Morning.AddDays(20), long.MaxValue), (Beginning, End, 600), (Beginning, End, 300), (Beginning, End, 200) })
                Assert.Equal(PointSeries.Of(point, journal.Read().TakeWhile(r => r.Seq <= upTo), from, to), journal.Series(point, from, to, upTo));
        }

        Assert.Equal("256.values 512.values", Kept());
    }

    [Fact]
    public void What_is_kept_is_what_is_read()
    {
        // So that no test passes because the records were read after all.
        var journal = _site.Open();
        var before = journal.Series("SL-T1", Beginning, End);
        var some = journal.Read().Take(256).Select(r => r with { Body = new Remark("nothing", null, null) }).ToList();
        File.WriteAllBytes(PathOf(256), ValueBlock.Of(some).ToBytes());

        Assert.True(journal.Series("SL-T1", Beginning, End).Count < before.Count - 100);
        var check = journal.Verify();
        Assert.Equal(256, check.FirstBad);
        Assert.Contains("256.values are not those of the records", check.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Dropped_or_torn_files_are_made_anew()
    {
        var journal = _site.Open();
        var before = journal.Series("SL-T1", Beginning, End);
        File.Delete(PathOf(256));
        File.WriteAllBytes(PathOf(512), File.ReadAllBytes(PathOf(512))[..^7]);

        Assert.Equal(before, journal.Series("SL-T1", Beginning, End));
        Assert.Equal("256.values 512.values", Kept());
        Assert.True(journal.Verify().Ok, journal.Verify().Why);
    }

    [Fact]
    public void Values_of_another_chain_are_made_anew()
    {
        using var other = new TemporarySite();
        var journal = other.Open();
        for (var i = 1; i <= 520; i++)
            journal.Append(Drafts.Entry(Drafts.Morning.AddHours(i), $"SL-T1={i % 9}"));
        Directory.CreateDirectory(other.File("values"));
        foreach (var name in Kept().Split(' '))
            File.Copy(Path.Combine(_site.File("values"), name), Path.Combine(other.File("values"), name));

        Assert.Equal(PointSeries.Of("SL-T1", journal.Read(), Beginning, End), journal.Series("SL-T1", Beginning, End));
        Assert.True(journal.Verify().Ok, journal.Verify().Why);
    }

    [Fact]
    public void Any_entry_comes_back_as_it_was_kept() => Drafts.Any.Array[1, 8].Sample(drafts =>
    {
        var records = drafts.Aggregate(new List<JournalRecord>(), (all, draft) => [.. all, JournalRecord.Seal(draft, all.Count == 0 ? Head.Empty : Head.Of(all[^1]))]);
        var block = ValueBlock.Read(ValueBlock.Of(records).ToBytes())!;
        foreach (var (point, values) in records.Where(r => r.Body is Entry).SelectMany(r => PointInEntry.All(r, (Entry)r.Body)))
        {
            var kept = Assert.Single(block.Of(point, DateTimeOffset.MinValue, DateTimeOffset.MaxValue), e => e.Origin == values.Origin);
            Assert.Equal(values.Read, kept.Read);
            Assert.Equal(values.Derived, kept.Derived);
        }
    }, iter: 300);

    private string PathOf(int seq) => Path.Combine(_site.File("values"), FormattableString.Invariant($"{seq}.values"));

    private string Kept() => string.Join(' ', Directory.GetFiles(_site.File("values")).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
}
