namespace Logbook.Plant.Tests;

public class OnDiskTests
{
    [Fact]
    public void What_the_system_refuses_comes_back_and_what_it_gives_too()
    {
        var folder = Directory.CreateTempSubdirectory("on-disk-").FullName;
        var file = Path.Combine(folder, "words");
        File.WriteAllText(file, "all quiet");

        Assert.Equal("all quiet", OnDisk.Try(() => File.ReadAllText(file), out var none));
        Assert.Null(none);
        Assert.Null(OnDisk.Try(() => File.ReadAllText(Path.Combine(folder, "gone")), out var missing));
        Assert.IsType<FileNotFoundException>(missing);
        Assert.IsType<UnauthorizedAccessException>(OnDisk.Refusal(() => File.WriteAllText(folder, "a folder is no file")));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void A_mistake_of_the_programs_own_is_thrown() =>
        Assert.Throws<FormatException>(() => OnDisk.Refusal(() => throw new FormatException("not the disk's")));
}
