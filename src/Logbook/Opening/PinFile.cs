using System.Globalization;
using System.Text;
using System.Collections.Immutable;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook;

/// <summary>
/// The PINs of a site, in <c>journal/pins</c>: readable for its owner alone, no part of the journal, never exported. One
/// line a person: code, rounds, salt, hash, wrong PINs in a row, when the last of them was typed.
/// </summary>
internal sealed class PinFile(string siteFolder) : IPinKeep
{
    private const UnixFileMode OwnerAlone = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const int Turns = 200;
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(25);

    private readonly string _path = Path.Combine(siteFolder, "journal", "pins");

    public PinBook Read() => File.Exists(_path) ? Parse(TextFile.Read(_path).Split('\n', StringSplitOptions.RemoveEmptyEntries)) : PinBook.Empty;

    public T Change<T>(Func<PinBook, (PinBook Book, T Answer)> change)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_path)!);
        using var turn = TakeTurn();
        var before = Read();
        var (book, answer) = change(before);
        if (!ReferenceEquals(before, book))
        {
            Write(book);
        }

        return answer;
    }

    /// <summary>Held by one terminal at a time; the system gives it back when its process dies.</summary>
    private FileStream TakeTurn()
    {
        for (var turn = 1; ; turn++)
        {
            try
            {
                return new FileStream(_path + ".lock", Options(FileMode.OpenOrCreate));
            }
            catch (IOException) when (turn < Turns)
            {
                Thread.Sleep(Turn);
            }
        }
    }

    /// <summary>Written beside, forced to the disk, then given its name: there is always one whole book.</summary>
    private void Write(PinBook book)
    {
        var fresh = _path + ".new";
        File.Delete(fresh);
        using (var file = new FileStream(fresh, Options(FileMode.CreateNew)))
        {
            file.Write(Encoding.UTF8.GetBytes(string.Concat(book.Pins.Select(p => Line(p.Key, p.Value) + "\n"))));
            file.Flush(flushToDisk: true);
        }

        File.Move(fresh, _path, overwrite: true);
    }

    private static FileStreamOptions Options(FileMode mode)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.ReadWrite, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerAlone; // on Windows the folder's own rights rule
        }

        return options;
    }

    private static string Line(string code, KeptPin kept) => string.Join(' ', code, kept.Pin.Rounds.ToString(CultureInfo.InvariantCulture),
        Convert.ToHexStringLower(kept.Pin.Salt), Convert.ToHexStringLower(kept.Pin.Hash), kept.Wrong.ToString(CultureInfo.InvariantCulture),
        kept.LastWrong?.ToString("O", CultureInfo.InvariantCulture) ?? "-");

    private PinBook Parse(string[] lines)
    {
        var pins = ImmutableSortedDictionary.CreateBuilder<string, KeptPin>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < lines.Length; i++)
        {
            try
            {
                var parts = lines[i].Split(' ');
                pins[parts[0]] = new KeptPin(
                    new PinHash(int.Parse(parts[1], CultureInfo.InvariantCulture), Convert.FromHexString(parts[2]), Convert.FromHexString(parts[3])),
                    int.Parse(parts[4], CultureInfo.InvariantCulture),
                    parts[5] is "-" ? null : DateTimeOffset.Parse(parts[5], CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind));
            }
            catch (Exception broken) when (broken is FormatException or IndexOutOfRangeException or OverflowException)
            {
                throw new IOException($"{_path}:{i + 1}: not a person's PIN as it is kept; move the file away and set PINs anew: logbook people pin", broken);
            }
        }

        return new PinBook(pins.ToImmutable());
    }
}
