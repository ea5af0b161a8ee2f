namespace Logbook.Plant;

/// <summary>A text file that a person gives: read whole, but never without end.</summary>
public static class TextFile
{
    /// <summary>Characters; a site, a template or a file of readings has far fewer.</summary>
    public const int Most = 16_000_000;

    /// <summary>The whole text.</summary>
    /// <exception cref="IOException">It cannot be read, or has more than <see cref="Most"/> characters.</exception>
    public static string Read(string path)
    {
        // A pipe without a writer would be waited for without end, already when it is opened. What is read is there or comes soon.
        var reading = Task.Factory.StartNew(() => Whole(path), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        return Task.WaitAny([reading], Patience) == 0 ? reading.GetAwaiter().GetResult()
            : throw new IOException($"{path}: nothing came within {Patience.TotalSeconds:F0} seconds; a file is read here, or a pipe that is being written to");
    }

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    private static string Whole(string path)
    {
        using var reader = new StreamReader(path);
        return Read(reader);
    }

    /// <inheritdoc cref="Read(string)"/>
    public static string Read(TextReader reader)
    {
        var text = new System.Text.StringBuilder();
        var buffer = new char[65_536];
        for (var read = reader.Read(buffer); read > 0; read = reader.Read(buffer))
        {
            text.Append(buffer, 0, read);
            if (text.Length > Most)
            {
                throw new IOException($"it has more than {Most / 1_000_000} million characters");
            }
        }

        return text.ToString();
    }
}
