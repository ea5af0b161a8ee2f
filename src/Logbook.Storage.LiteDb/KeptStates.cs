using System.Globalization;
using System.Text;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// States that follow from the records, a file each, so that nobody has to replay a long journal. They may be deleted at any
/// time; one that does not check, was made by another build or is not of this chain is passed over.
/// </summary>
internal sealed class KeptStates(string folder)
{
    // The newest ones make opening quick, the others a look at the past.
    private const int NewestKept = 8;
    private const long AlwaysEvery = 4096;

    /// <summary>The newest one up to <paramref name="upTo"/> whose record is in the journal; the empty one when there is none.</summary>
    public State Newest(long upTo, Func<Head, bool> isInJournal) =>
        Seqs().Where(seq => seq <= upTo).OrderDescending().Select(Read).FirstOrDefault(state => state is not null && isInJournal(state.Head)) ?? State.Empty;

    /// <summary>Keeps it when the folder can be written; else the next start takes longer, and that is all.</summary>
    public void Keep(State state) => _ = OnDisk.Refusal(() =>
    {
        Directory.CreateDirectory(folder);
        var draft = string.Create(CultureInfo.InvariantCulture, $"{PathOf(state.Head.Seq)}.{Environment.ProcessId}");
        File.WriteAllBytes(draft, Sealed(state));
        File.Move(draft, PathOf(state.Head.Seq), overwrite: true);
        DropOld();
    });

    /// <summary>Why the state kept of this record is not the one that follows from the records; null when it is, or none was kept.</summary>
    public string? WhyNot(State replayed) =>
        File.Exists(PathOf(replayed.Head.Seq)) && Read(replayed.Head.Seq) is { } kept && !StateForm.Write(kept).AsSpan().SequenceEqual(StateForm.Write(replayed))
            ? $"record {replayed.Head.Seq} is sound, but what is kept of it in {PathOf(replayed.Head.Seq)} does not follow from the records: delete that file"
            : null;

    private static byte[] Sealed(State state)
    {
        var body = StateForm.Write(state);
        return [.. Encoding.ASCII.GetBytes(FirstLine(body)), .. body];
    }

    // No fsync: a file that a power cut tore does not match its first line.
    private static string FirstLine(ReadOnlySpan<byte> body) => $"{StateForm.Fold} {JournalRecord.HashOf(body)}\n";

    private State? Read(long seq) => OnDisk.Try(
        () =>
        {
            var bytes = NoPipe.Bytes(PathOf(seq)).AsSpan();
            var body = bytes[(bytes.IndexOf((byte)'\n') + 1)..];
            return bytes[..^body.Length].SequenceEqual(Encoding.ASCII.GetBytes(FirstLine(body))) ? StateForm.Read(body) : null;
        },
        out _);

    private void DropOld()
    {
        foreach (var seq in Seqs().OrderDescending().Skip(NewestKept).Where(seq => seq % AlwaysEvery != 0))
            File.Delete(PathOf(seq));
    }

    private IEnumerable<long> Seqs() => !Directory.Exists(folder) ? [] : Directory.EnumerateFiles(folder, "*.json")
        .Select(path => long.TryParse(Path.GetFileNameWithoutExtension(path), CultureInfo.InvariantCulture, out var seq) ? seq : 0)
        .Where(seq => seq > 0);

    private string PathOf(long seq) => Path.Combine(folder, seq.ToString(CultureInfo.InvariantCulture) + ".json");
}
