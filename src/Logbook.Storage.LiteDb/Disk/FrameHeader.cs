using System.Buffers.Binary;
using System.IO.Hashing;
using System.Runtime.InteropServices;

namespace Logbook.Storage.LiteDb.Disk;

/// <summary>What stands before the pages of one save in the log.</summary>
/// <param name="Generation">New after every reset, so that a frame from before it can never be taken for one of those after it.</param>
/// <param name="Number">From 0 within the generation.</param>
/// <param name="FirstPage">Where in the log's image the pages belong.</param>
/// <param name="Length">Of the pages, in bytes.</param>
/// <param name="Checksum">Over the other fields and the pages.</param>
[StructLayout(LayoutKind.Auto)] // its form on the disk is Write's alone
internal readonly record struct FrameHeader(ulong Generation, uint Number, int FirstPage, int Length, ulong Checksum)
{
    public const int Size = 32;
    public const int PageSize = 8192;
    private const int Summed = 24;

    private static ReadOnlySpan<byte> Mark => "BLOG"u8;

    public static FrameHeader Of(ulong generation, uint number, int firstPage, ReadOnlySpan<byte> pages)
    {
        var bare = new FrameHeader(generation, number, firstPage, pages.Length, 0);
        return bare with { Checksum = bare.Sum(pages) };
    }

    /// <summary>Null when no frame begins here.</summary>
    public static FrameHeader? Read(ReadOnlySpan<byte> from)
    {
        if (from.Length < Size || !from.StartsWith(Mark))
            return null;
        var header = new FrameHeader(
            BinaryPrimitives.ReadUInt64LittleEndian(from[4..]),
            BinaryPrimitives.ReadUInt32LittleEndian(from[12..]),
            BinaryPrimitives.ReadInt32LittleEndian(from[16..]),
            BinaryPrimitives.ReadInt32LittleEndian(from[20..]),
            BinaryPrimitives.ReadUInt64LittleEndian(from[24..]));
        return header.FirstPage >= 0 && header.Length > 0 ? header : null;
    }

    /// <summary>Null when no frame begins at this place of the file.</summary>
    public static FrameHeader? At(IRawFile file, long place)
    {
        Span<byte> header = stackalloc byte[Size];
        return Read(header[..file.Read(header, place)]);
    }

    /// <summary>The next place from <paramref name="offset"/> on where a frame may begin; null when there is none.</summary>
    public static int? Next(ReadOnlySpan<byte> all, int offset) =>
        offset < all.Length && all[offset..].IndexOf(Mark) is var ahead and >= 0 ? offset + ahead : null;

    public void Write(Span<byte> into)
    {
        Mark.CopyTo(into);
        BinaryPrimitives.WriteUInt64LittleEndian(into[4..], Generation);
        BinaryPrimitives.WriteUInt32LittleEndian(into[12..], Number);
        BinaryPrimitives.WriteInt32LittleEndian(into[16..], FirstPage);
        BinaryPrimitives.WriteInt32LittleEndian(into[20..], Length);
        BinaryPrimitives.WriteUInt64LittleEndian(into[24..], Checksum);
    }

    public bool Fits(ReadOnlySpan<byte> pages) => Sum(pages) == Checksum;

    private ulong Sum(ReadOnlySpan<byte> pages)
    {
        Span<byte> header = stackalloc byte[Size];
        Write(header);
        var sum = new XxHash3();
        sum.Append(header[..Summed]);
        sum.Append(pages);
        return sum.GetCurrentHashAsUInt64();
    }
}
