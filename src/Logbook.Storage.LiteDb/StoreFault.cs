using LiteDB;
using Logbook.Journal;

namespace Logbook.Storage.LiteDb;

/// <summary>From what the disk or LiteDB throws to the one line that a person gets.</summary>
internal static class StoreFault
{
    private const string Advice = "logbook verify says how far it is sound, logbook export --format jsonl brings that out, logbook restore puts a backup into a new site folder";

    // EINVAL: a damaged page sends LiteDB to a place that no file has.
    private const int InvalidArgument = 22;

    /// <summary>Runs work on the files; whatever goes wrong with them comes out as a <see cref="JournalException"/>.</summary>
    /// <param name="what">What could not be done, as a sentence's beginning: <c>record 12 cannot be read</c>.</param>
    public static T Guard<T>(string what, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (LiteException damaged)
        {
            throw new JournalException(JournalTrouble.Damaged, $"{what}: {OneLine(damaged)}; {Advice}", damaged);
        }
        catch (UnauthorizedAccessException denied)
        {
            throw new JournalException(JournalTrouble.Unreadable, $"{what}: {OneLine(denied)}", denied);
        }
        catch (IOException impossible) when (impossible.HResult == InvalidArgument)
        {
            throw new JournalException(JournalTrouble.Damaged, $"{what}: the data file is damaged or cut short ({OneLine(impossible)}); {Advice}", impossible);
        }
        catch (IOException failed)
        {
            throw new JournalException(IsFull(failed) ? JournalTrouble.Full : JournalTrouble.Unreadable, $"{what}: {OneLine(failed)}", failed);
        }
        catch (SystemException damaged) when (IsDamage(damaged))
        {
            throw new JournalException(JournalTrouble.Damaged, $"{what}: the data file is damaged ({OneLine(damaged)}); {Advice}", damaged);
        }
    }

    // LiteDB checks little of what it reads: a damaged page shows itself as any of these.
    private static bool IsDamage(SystemException e) => e is ArgumentException or ArithmeticException or FormatException
        or IndexOutOfRangeException or InvalidCastException or InvalidDataException or InvalidOperationException or KeyNotFoundException
        or NotImplementedException or NotSupportedException or NullReferenceException or OutOfMemoryException;

    // ENOSPC, EDQUOT and EFBIG of Linux; disk full and handle disk full of Windows.
    public static bool IsFull(IOException e) => e.HResult is 28 or 122 or 27 or unchecked((int)0x80070070) or unchecked((int)0x80070027);

    private static string OneLine(Exception e) => e.Message.ReplaceLineEndings(" ").TrimEnd('.');
}
