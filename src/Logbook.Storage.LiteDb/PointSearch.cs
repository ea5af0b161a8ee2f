using System.Text;
using System.Text.Json;
using Logbook.Journal;

namespace Logbook.Storage.LiteDb;

/// <summary>Finds what one point's history needs: the hours that are asked for, and the corrections of what was found there.</summary>
internal sealed class PointSearch(RecordTable records, ParsedRecords parsed, string point, long upTo)
{
    private readonly PointSeries _series = new(point);
    private readonly string _mention = Mention(point);

    public IReadOnlyList<SeriesValue> Between(DateTimeOffset from, DateTimeOffset to)
    {
        var (first, last) = (long.MaxValue, 0L);
        foreach (var stored in records.Speaking(from, to))
        {
            (first, last) = (Math.Min(first, stored.Seq), Math.Max(last, stored.Seq));
            if (MayConcern(stored))
                Add(stored);
        }

        AddCorrections(first, last);
        AddMissing();
        return _series.Between(from, to);
    }

    /// <summary>The same out of what is kept of the records before <paramref name="next"/>, and the few from there on.</summary>
    public IReadOnlyList<SeriesValue> Between(DateTimeOffset from, DateTimeOffset to, IEnumerable<PointInEntry> kept, long next, int few)
    {
        foreach (var entry in kept)
            _series.Add(entry);
        foreach (var stored in records.From(next, few).Where(MayConcern))
            Add(stored);
        AddCorrections(1, long.MaxValue);
        AddMissing();
        return _series.Between(from, to);
    }

    // A correction may bring a reading into the range whose entry lies outside.
    private void AddMissing()
    {
        foreach (var seq in _series.Missing)
        {
            if (records.Find(seq) is { } entry)
                Add(entry);
            AddCorrections(seq, seq);
        }
    }

    private void AddCorrections(long first, long last)
    {
        foreach (var stored in first <= last ? records.Correcting(first, last) : [])
            Add(stored);
    }

    private void Add(Stored stored)
    {
        if (stored.Seq <= upTo)
            _series.Add(parsed.Of(stored));
    }

    // Reading a whole record takes a hundred times as long as looking for the tag in its bytes.
    private bool MayConcern(Stored stored) =>
        Encoding.UTF8.GetString(stored.Bytes).Contains(_mention, StringComparison.OrdinalIgnoreCase);

    private static string Mention(string point)
    {
        using var text = JsonDocument.Parse($"\"{JsonEncodedText.Encode(point)}\"");
        return Encoding.UTF8.GetString(CanonicalJson.Write(text.RootElement));
    }
}
