using LiteDB;
using LiteDB.Engine;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// LiteDB on two streams of our own. LiteDB's own files acknowledge before the disk has the data; here a save is one frame in
/// the log and one fsync, and the data file changes at checkpoints only.
/// </summary>
internal sealed class DurableDatabase : IDisposable
{
    private readonly IRawFile _data;
    private readonly IRawFile _log;
    private readonly FrameFile _frames;
    private readonly LogStream _logStream;

    private DurableDatabase(IRawFile data, IRawFile log, bool readOnly, long room = 0)
    {
        _data = data;
        _log = log;
        _frames = new FrameFile(log, room);
        _logStream = new LogStream(_frames);
        Engine = new LiteEngine(new EngineSettings
        {
            DataStream = new DataStream(data),
            LogStream = _logStream,
            TempStream = new MemoryStream(),
            Collation = Collation.Binary,
            ReadOnly = readOnly,
        });
    }

    public LiteEngine Engine { get; }

    /// <summary>Where the log is damaged, in words; null when it is sound. A damaged one still shows what stands before the damage.</summary>
    public string? Damage => _frames.Damage;

    /// <summary>Size of the log's image: what a checkpoint would bring into the data file.</summary>
    public long LogLength => _logStream.Length;

    /// <summary>What the log held last when it was read or written here.</summary>
    public LogEnd LogEnd => _frames.End;

    /// <summary>False when a file was deleted, replaced or changed by another program while it was open here.</summary>
    public bool IsStillAt(IDisk disk, string data, string log) => disk.IsAt(data, _data) && disk.IsAt(log, _log) && _frames.IsAsLeft();

    public static DurableDatabase ForReading(IRawFile data, IRawFile log) => new(data, log, readOnly: true);

    /// <param name="data">The data file.</param>
    /// <param name="log">The log.</param>
    /// <param name="room">Length in bytes that the log gets beforehand, so that saves need not make it longer.</param>
    public static DurableDatabase ForWriting(IRawFile data, IRawFile log, long room = 0)
    {
        var database = new DurableDatabase(data, log, readOnly: false, room);
        database._frames.BeginWriting();
        return database;
    }

    /// <summary>Content of a new data file: made in memory as a whole, so that a half-made one never has the data file's name.</summary>
    public static byte[] NewDataFile(Action<LiteEngine> fill)
    {
        var data = new MemoryFile();
        using var database = new DurableDatabase(data, new MemoryFile(), readOnly: false);
        database.Engine.Pragma(Pragmas.CHECKPOINT, 0); // never by itself: a checkpoint needs the lock that keeps readers away
        fill(database.Engine);
        database.Save();
        database.Checkpoint();
        return data.ToArray();
    }

    /// <summary>Returns when everything that was committed is on the disk.</summary>
    /// <exception cref="IOException">It could not be brought there, and was taken back where the disk allowed that.</exception>
    public void Save()
    {
        try
        {
            _logStream.Save();
        }
        catch (IOException refused)
        {
            TakeBack(refused);
            throw;
        }
    }

    private void TakeBack(IOException refused)
    {
        try
        {
            _frames.TakeBack();
        }
        catch (IOException)
        {
            const string look = "and it could not be taken back: look whether it is there before it is entered again";
            throw new IOException($"{refused.Message} {look}", refused.HResult);
        }
    }

    /// <summary>Brings the log into the data file. No reader may have the files open.</summary>
    public void Checkpoint() => Engine.Checkpoint();

    public void Dispose()
    {
        Engine.Dispose();
        _log.Dispose();
        _data.Dispose();
    }
}
