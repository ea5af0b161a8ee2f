using System.Buffers;
using System.Buffers.Binary;
using System.IO.Compression;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// A record's bytes as they lie in the data file: their length, then the bytes compressed (Brotli, RFC 7932). Records repeat
/// themselves so much that a quarter is left; what comes out is the record's bytes exactly, or damage.
/// </summary>
internal static class Packed
{
    // A thirtieth of a millisecond for a round. Twice that would gain a twentieth of the room, and every save would wait for it.
    private const int Quality = 3;
    private const int WindowBits = 18;
    private const int MostSensible = 64 << 20;

    public static byte[] Pack(ReadOnlySpan<byte> bytes)
    {
        var buffer = ArrayPool<byte>.Shared.Rent(sizeof(int) + BrotliEncoder.GetMaxCompressedLength(bytes.Length));
        try
        {
            BinaryPrimitives.WriteInt32LittleEndian(buffer, bytes.Length);
            return BrotliEncoder.TryCompress(bytes, buffer.AsSpan(sizeof(int)), out var length, Quality, WindowBits)
                ? buffer[..(sizeof(int) + length)]
                : throw new InvalidOperationException("a record did not fit the room that it cannot exceed");
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    /// <exception cref="InvalidDataException">The bytes are damaged.</exception>
    public static byte[] Unpack(ReadOnlySpan<byte> packed)
    {
        var length = packed.Length > sizeof(int) ? BinaryPrimitives.ReadInt32LittleEndian(packed) : -1;
        if (length is < 0 or > MostSensible)
            throw new InvalidDataException("a stored record has no sensible length");
        var bytes = new byte[length];
        return BrotliDecoder.TryDecompress(packed[sizeof(int)..], bytes, out var written) && written == length
            ? bytes
            : throw new InvalidDataException("a stored record does not unpack");
    }
}
