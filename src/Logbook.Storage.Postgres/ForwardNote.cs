using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Storage.Postgres;

/// <summary>
/// What the server last acknowledged, in a small file beside the journal: for saying how far behind it is while it is away. What
/// is sent never depends on it, so it may be deleted at any time.
/// </summary>
public sealed class ForwardNote(string path)
{
    /// <summary>The note of what one server acknowledged of a site: a line may be forwarded to several, and each stands somewhere else.</summary>
    public static ForwardNote Of(string siteFolder, ServerAddress server) => new(Path.Combine(siteFolder, "journal", $"forwarded-{server.Mark}"));

    /// <summary>The acknowledged end, and when; null when nothing was noted.</summary>
    public Acknowledged? Read()
    {
        var words = OnDisk.Try(() => TextFile.Read(path).Split(' ', StringSplitOptions.TrimEntries), out _);
        return words?.Length == 3 && long.TryParse(words[0], CultureInfo.InvariantCulture, out var seq)
            && long.TryParse(words[2], CultureInfo.InvariantCulture, out var at) && at >= 0 && at <= DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()
            ? new(new(seq, words[1]), DateTimeOffset.FromUnixTimeMilliseconds(at))
            : null;
    }

    /// <summary>Notes it when the disk lets it: the server's own end is what counts, without the note less can be said while it is away.</summary>
    public void Write(Head head, DateTimeOffset at) => _ = OnDisk.Refusal(() =>
    {
        var draft = string.Create(CultureInfo.InvariantCulture, $"{path}.{Environment.ProcessId}");
        File.WriteAllText(draft, string.Create(CultureInfo.InvariantCulture, $"{head.Seq} {head.Hash} {at.ToUnixTimeMilliseconds()}\n"));
        File.Move(draft, path, overwrite: true);
    });
}

/// <summary>An end that the server acknowledged, and when.</summary>
public sealed record Acknowledged(Head Head, DateTimeOffset At);
