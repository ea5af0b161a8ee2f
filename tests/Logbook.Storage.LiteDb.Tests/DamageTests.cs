using System.Diagnostics;
using System.Globalization;
using Logbook.Journal;
using Logbook.Journal.Tests;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>A journal that was changed behind the program's back says so.</summary>
public sealed class DamageTests : IDisposable
{
    private const int Records = 12;

    private readonly TemporarySite _site = new();

    public void Dispose() => _site.Dispose();

    [Fact]
    public void A_changed_byte_of_any_stored_record_is_found_and_named()
    {
        var data = InTheDataFile();
        var records = _site.Open().Read().ToList();
        foreach (var seq in (int[])[1, 2, 7, Records])
        {
            var changed = data.ToArray();
            var (place, length) = PlaceOf(data, Packed.Pack(records[seq - 1].Bytes.Span));
            changed[place + (length / 2)] ^= 1;
            File.WriteAllBytes(_site.File("records.db"), changed);

            var check = _site.Open().Verify();

            Assert.False(check.Ok);
            Assert.InRange(check.FirstBad!.Value, seq, seq + 1); // the next record's hash, or the noted head, speaks against it
        }
    }

    [Fact]
    public void Whatever_byte_of_the_data_file_is_changed_no_record_reads_differently_unnoticed()
    {
        var data = InTheDataFile();
        var sound = _site.Open().Bytes().Select(bytes => Convert.ToHexString(bytes.Span)).ToList();
        var noticed = 0;
        foreach (var place in Enumerable.Range(0, 60).Select(i => (i * 1237) % data.Length)) // spread over header, indexes and records
        {
            var changed = data.ToArray();
            changed[place] ^= 0x10;
            File.WriteAllBytes(_site.File("records.db"), changed);

            if (Looks() is { } found)
                Assert.Equal(sound, found, StringComparer.Ordinal);
            else
                noticed++;
        }

        Assert.InRange(noticed, 1, 60);
    }

    [Fact]
    public void A_record_whose_index_fields_were_changed_is_named()
    {
        InTheDataFile();
        using (var database = Open())
        {
            using var found = database.Engine.Query("records", new LiteDB.Query { Where = { "$._id = 3" } });
            found.Read();
            var document = found.Current.AsDocument;
            document["h"] = new LiteDB.BsonArray { 1L };
            found.Dispose();
            database.Engine.Update("records", [document]);
            database.Save();
        }

        var check = _site.Open().Verify();

        Assert.Equal(3, check.FirstBad);
        Assert.Contains("fields that find it", check.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void The_head_is_what_sha256sum_says_of_the_last_records_bytes()
    {
        // An implementation of FIPS 180-4 that is not ours: the one of the system's core utilities.
        InTheDataFile();
        var journal = _site.Open();
        var file = Path.Combine(_site.Path, "last.json");
        File.WriteAllBytes(file, journal.Bytes(Records).Single().ToArray());

        using var sha256sum = Process.Start(new ProcessStartInfo("sha256sum", [file]) { UseShellExecute = false, RedirectStandardOutput = true })!;
        Assert.StartsWith(journal.Head.Hash + " ", sha256sum.StandardOutput.ReadToEnd(), StringComparison.Ordinal);
    }

    private List<string>? Looks()
    {
        using var journal = _site.Open();
        try
        {
            var check = journal.Verify();
            return check.Ok ? [.. journal.Bytes().Select(bytes => Convert.ToHexString(bytes.Span))] : null;
        }
        catch (JournalException damaged)
        {
            Assert.Equal(JournalTrouble.Damaged, damaged.Trouble);
            return null;
        }
    }

    /// <summary>A journal whose records all lie in the data file; returns its bytes.</summary>
    private byte[] InTheDataFile()
    {
        using (var journal = _site.Open())
        {
            for (var i = 1; i <= Records; i++)
                journal.Append(Drafts.Of(new Remark($"slaker {i.ToString("00", CultureInfo.InvariantCulture)} calm", null, null)));
        }

        using (var database = Open())
            database.Checkpoint();
        return File.ReadAllBytes(_site.File("records.db"));
    }

    private DurableDatabase Open() => DurableDatabase.ForWriting(
        Disk.DiskFile.ForWriting(_site.File("records.db")), Disk.DiskFile.ForWriting(_site.File("records.log")));

    private static (int Place, int Length) PlaceOf(byte[] data, byte[] record) => data.AsSpan().IndexOf(record) is var place and >= 0
        ? (place, record.Length)
        : throw new InvalidOperationException("the record is not in the data file");
}
