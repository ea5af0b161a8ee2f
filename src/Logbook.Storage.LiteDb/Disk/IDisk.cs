namespace Logbook.Storage.LiteDb.Disk;

/// <summary>Where the journal's files are. A test hands in one that loses power, fills up or fails.</summary>
internal interface IDisk
{
    /// <summary>The file's length; null when there is no such file.</summary>
    long? LengthOf(string path);

    /// <summary>True when the path leads to this open file, and not to none or to another one.</summary>
    bool IsAt(string path, IRawFile file);

    IRawFile ForReading(string path);

    /// <summary>Creates the file when there is none.</summary>
    IRawFile ForWriting(string path);

    /// <summary>Gives the file this content as a whole: after a power cut it is either the old one or the new one.</summary>
    void Replace(string path, ReadOnlySpan<byte> content);

    /// <summary>Creates the folder, if need be, so that it lasts.</summary>
    void CreateFolder(string path);

    /// <summary>Returns when the folder's names are on the disk: only then does a file that was created survive a power cut.</summary>
    void SyncFolder(string path);
}
