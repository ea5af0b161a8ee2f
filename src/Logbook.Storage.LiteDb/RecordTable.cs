using LiteDB;
using LiteDB.Engine;
using Logbook.Journal;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// The records as documents, one each: <c>_id</c> is the sequence number, <c>b</c> the canonical bytes, packed. Two more fields find
/// them, each an array so that it may be indexed and absent: <c>h</c> the hours that the record speaks of (its own time and
/// that of each reading, in hours since 1970), <c>c</c> the entry that a correction names.
/// </summary>
/// <param name="engine">The open database.</param>
internal sealed class RecordTable(LiteEngine engine)
{
    private const string Name = "records";
    private const string Bytes = "b";
    private const string Hours = "h";
    private const string Corrects = "c";

    public static void Create(LiteEngine engine)
    {
        engine.EnsureIndex(Name, "hours", $"$.{Hours}[*]", unique: false);
        engine.EnsureIndex(Name, "corrects", $"$.{Corrects}[*]", unique: false);
    }

    public void Insert(JournalRecord record) => engine.Insert(Name, [ToDocument(record)], BsonAutoId.Int64);

    /// <summary>The last record; null when there is none.</summary>
    public Stored? Last() => Run(new Query { OrderBy = "$._id", Order = Query.Descending, Limit = 1 }).FirstOrDefault();

    /// <summary>One record; null when there is no such one.</summary>
    public Stored? Find(long seq) => Run(Where(BsonExpression.Create("$._id = @0", seq))).FirstOrDefault();

    /// <summary>Up to <paramref name="count"/> records from <paramref name="seq"/> on, in order.</summary>
    public IEnumerable<Stored> From(long seq, int count)
    {
        var query = Where(BsonExpression.Create("$._id >= @0", seq));
        query.OrderBy = "$._id";
        query.Limit = count;
        return Run(query);
    }

    /// <summary>Every record that speaks of an hour which touches [from, to), in no order; one that speaks of several may come more than once.</summary>
    public IEnumerable<Stored> Speaking(DateTimeOffset from, DateTimeOffset to) => Run(Where(OfHours(from, to)));

    /// <summary>Sequence numbers of the same records, each once and in order.</summary>
    public SortedSet<long> SeqsSpeaking(DateTimeOffset from, DateTimeOffset to)
    {
        var query = Where(OfHours(from, to));
        query.Select = "$._id";
        var seqs = new SortedSet<long>();
        using var reader = engine.Query(Name, query);
        while (reader.Read())
            seqs.Add(reader.Current["_id"].AsInt64);
        return seqs;
    }

    /// <summary>Every correction of an entry with a sequence number from <paramref name="first"/> to <paramref name="last"/>.</summary>
    public IEnumerable<Stored> Correcting(long first, long last) => Run(Where(BsonExpression.Create($"$.{Corrects}[*] ANY BETWEEN @0 AND @1", first, last)));

    // Numbers are handed over beside the text: each text is compiled once, and kept for the life of the program.
    private static BsonExpression OfHours(DateTimeOffset from, DateTimeOffset to) =>
        BsonExpression.Create($"$.{Hours}[*] ANY BETWEEN @0 AND @1", HourOf(from), HourOf(to));

    private static Query Where(BsonExpression condition)
    {
        var query = Query.All();
        query.Where.Add(condition);
        return query;
    }

    private IEnumerable<Stored> Run(Query query)
    {
        using var reader = engine.Query(Name, query);
        while (reader.Read())
        {
            var document = reader.Current.AsDocument;
            yield return new(document["_id"].AsInt64, document[Bytes].AsBinary, document);
        }
    }

    /// <summary>Why a document's other fields do not say what its record says; null when they do.</summary>
    public static string? WhyNot(Stored stored, JournalRecord record) =>
        Finding(stored.Document) == Finding(record) ? null : $"record {record.Seq} is sound, but the fields that find it were changed";

    // How bytes are packed may differ from one build of the compression to the next; what they unpack to may not.
    private static BsonDocument Finding(BsonDocument document)
    {
        var finding = new BsonDocument();
        document.CopyTo(finding);
        finding.Remove(Bytes);
        return finding;
    }

    private static BsonDocument ToDocument(JournalRecord record)
    {
        var document = Finding(record);
        document[Bytes] = Packed.Pack(record.Bytes.Span);
        return document;
    }

    private static BsonDocument Finding(JournalRecord record)
    {
        var document = new BsonDocument
        {
            ["_id"] = record.Seq,
            [Hours] = new BsonArray(HoursOf(record).Select(hour => new BsonValue(hour))),
        };
        if (record.Body is Correction correction)
            document[Corrects] = new BsonArray(new BsonValue(correction.Target));
        return document;
    }

    private static IEnumerable<long> HoursOf(JournalRecord record) => record.Body switch
    {
        Entry entry => entry.Readings.Select(reading => HourOf(reading.At)).Append(HourOf(record.At)).Distinct().Order(),
        Correction correction => correction.Readings.Select(reading => HourOf(reading.At)).Append(HourOf(record.At)).Distinct().Order(),
        _ => [HourOf(record.At)],
    };

    private static long HourOf(DateTimeOffset time) => time.ToUnixTimeSeconds() / 3600;
}

/// <summary>A document as it was found.</summary>
internal sealed class Stored(long seq, byte[] packed, BsonDocument document)
{
    private byte[]? _bytes;

    public long Seq => seq;

    public byte[] Packed => packed;

    public BsonDocument Document => document;

    /// <summary>The record's bytes, unpacked when somebody asks.</summary>
    /// <exception cref="JournalException">They do not unpack.</exception>
    public byte[] Bytes => _bytes ??= StoreFault.Guard($"record {seq} cannot be read", () => LiteDb.Packed.Unpack(packed));
}
