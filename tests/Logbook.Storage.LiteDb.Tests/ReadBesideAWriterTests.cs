using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>
/// A reader goes through the log while a writer adds to it: a page that it read before a save can lie in front of one that it
/// read after the next save. Only what looks the same a second time is damage.
/// </summary>
public sealed class ReadBesideAWriterTests
{
    private const int Frames = 3;
    private static readonly int Frame = FrameHeader.Size + FrameHeader.PageSize;

    [Fact]
    public void What_a_writer_was_saving_meanwhile_is_no_damage()
    {
        var (damage, pages) = Replayed(oldReads: 1);

        Assert.Null(damage);
        Assert.Equal([0L, FrameHeader.PageSize, 2L * FrameHeader.PageSize], pages);
    }

    [Fact]
    public void What_is_missing_again_is_damage_and_nothing_behind_it_is_taken()
    {
        var (damage, pages) = Replayed(oldReads: int.MaxValue);

        Assert.Equal($"the log is damaged at byte {Frame}: a sound save follows at byte {2 * Frame}", damage);
        Assert.Equal([0L], pages);
    }

    private static (string? Damage, List<long> Pages) Replayed(int oldReads)
    {
        var log = new SimulatedDisk(new Random(1)).ForWriting("records.log");
        var written = new FrameFile(log);
        for (var i = 0; i < Frames; i++)
        {
            written.Append(i * (long)FrameHeader.PageSize, Enumerable.Repeat((byte)(i + 1), FrameHeader.PageSize).ToArray());
        }

        var pages = new List<long>();
        var read = new FrameFile(new ReadTooEarly(log, oldReads));
        read.Replay((position, _) => pages.Add(position));
        return (read.Damage, pages);
    }

    /// <summary>Its second frame is still room in the first so many readings.</summary>
    private sealed class ReadTooEarly(IRawFile file, int oldReads) : IRawFile
    {
        private int _reads;

        public long Length { get => file.Length; set => file.Length = value; }

        public int Read(Span<byte> into, long offset)
        {
            var count = file.Read(into, offset);
            if (_reads++ < oldReads)
            {
                into.Slice(Frame, Frame).Clear();
            }

            return count;
        }

        public void Write(ReadOnlySpan<byte> bytes, long offset) => file.Write(bytes, offset);

        public void Sync() => file.Sync();

        public void Dispose() => file.Dispose();
    }
}
