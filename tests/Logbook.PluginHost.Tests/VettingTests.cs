using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace Logbook.PluginHost.Tests;

public sealed class VettingTests : IDisposable
{
    private readonly PluginFolder _folder = new();

    [Fact]
    public void A_listed_and_unchanged_plug_in_is_loaded()
    {
        var report = _folder.With("Slaking").LoadOne();

        Assert.Equal(("Slaking", "0.1.0", "loaded", ""), (report.Name, report.Version, report.State, report.Code));
        Assert.Contains(report.Calculations, c => c.Info.Id == "slaker-temperature-rise");
    }

    [Fact]
    public void A_changed_file_is_refused_before_it_is_loaded()
    {
        File.AppendAllText(_folder.With("Slaking").PathOf("Slaking", "Slaking.dll"), "x");

        Refused("changed", "Slaking.dll");
    }

    [Fact]
    public void A_file_that_is_not_listed_is_refused()
    {
        File.WriteAllText(_folder.With("Slaking").PathOf("Slaking", "extra.dll"), "x");

        Refused("extra", "extra.dll");
    }

    [Fact]
    public void A_listed_file_that_is_gone_is_refused()
    {
        File.Delete(_folder.With("Slaking").PathOf("Slaking", "Slaking.deps.json"));

        Refused("missing", "Slaking.deps.json");
    }

    [Fact]
    public void A_listed_folder_that_is_gone_is_said()
    {
        Directory.Delete(_folder.With("Slaking", "Dregs").PathOf("Dregs"), recursive: true);

        var report = Assert.Single(_folder.Load(), r => r.State != "loaded");
        Assert.Equal(("Dregs", "missing"), (report.Name, report.Code));
    }

    [Fact]
    public void A_folder_that_is_not_listed_is_refused()
    {
        Directory.CreateDirectory(_folder.With("Slaking").PathOf("Stranger"));

        var report = Assert.Single(_folder.Load(), r => r.State != "loaded");
        Assert.Equal(("Stranger", "refused", "not-listed"), (report.Name, report.State, report.Code));
    }

    [Fact]
    public void A_folder_with_an_odd_name_is_refused()
    {
        Directory.CreateDirectory(_folder.PathOf("-rf"));

        Assert.Equal("name", _folder.Trusted().LoadOne().Code);
    }

    [Fact]
    public void A_symbolic_link_is_refused()
    {
        _folder.With("Slaking");
        File.Move(_folder.PathOf("Slaking", "Slaking.dll"), _folder.PathOf("elsewhere.dll"));
        File.CreateSymbolicLink(_folder.PathOf("Slaking", "Slaking.dll"), _folder.PathOf("elsewhere.dll"));

        Refused("link", "Slaking.dll");
    }

    [Fact]
    public void A_file_that_everyone_may_write_is_refused()
    {
        if (OperatingSystem.IsWindows())
        {
            return; // there are no such bits there
        }

        var file = _folder.With("Slaking").PathOf("Slaking", "Slaking.dll");
        File.SetUnixFileMode(file, File.GetUnixFileMode(file) | UnixFileMode.OtherWrite);

        Refused("world-writable", "Slaking.dll");
    }

    [Fact]
    public void Without_a_manifest_nothing_is_loaded()
    {
        File.Delete(_folder.With("Slaking").PathOf("manifest.json"));

        Assert.Equal(("refused", "no-manifest"), (_folder.LoadOne().State, _folder.LoadOne().Code));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{\"Slaking/Slaking.dll\": 3}")]
    public void A_damaged_manifest_is_said(string text)
    {
        File.WriteAllText(_folder.With("Slaking").PathOf("manifest.json"), text);

        Assert.Equal("bad-manifest", _folder.LoadOne().Code);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_said() =>
        Assert.Equal("no-folder", Assert.Single(PluginCatalog.LoadShipped(_folder.PathOf("nowhere"))).Code);

    [Fact]
    public void A_file_that_is_no_assembly_is_said()
    {
        Directory.CreateDirectory(_folder.PathOf("Text"));
        File.WriteAllText(_folder.PathOf("Text", "Text.dll"), "no code");

        Assert.Equal(("failed", "no-assembly"), (_folder.Trusted().LoadOne().State, _folder.LoadOne().Code));
    }

    [Theory]
    [InlineData("System.Runtime", 10, 0, "no-contracts")]
    [InlineData("Logbook.Contracts", 99, 0, "contracts-version")]
    [InlineData("Logbook.Contracts", 0, 99, "contracts-version")]
    public void An_assembly_built_against_other_contracts_is_refused_unread(string reference, int major, int minor, string code)
    {
        Directory.CreateDirectory(_folder.PathOf("Odd"));
        File.WriteAllBytes(_folder.PathOf("Odd", "Odd.dll"), EmptyAssembly(reference, new Version(major, minor, 0, 0)));
        _folder.Trusted();

        Refused(code, "Logbook.Contracts");
    }

    public void Dispose() => _folder.Dispose();

    private void Refused(string code, string named)
    {
        var report = _folder.LoadOne();
        Assert.Equal(("refused", code), (report.State, report.Code));
        Assert.Contains(named, report.Text, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', report.Text);
        Assert.Empty(report.Calculations);
    }

    private static byte[] EmptyAssembly(string reference, Version version)
    {
        var metadata = new MetadataBuilder();
        metadata.AddModule(0, metadata.GetOrAddString("Odd.dll"), metadata.GetOrAddGuid(new Guid(1, 2, 3, [4, 5, 6, 7, 8, 9, 10, 11])), default, default);
        metadata.AddAssembly(metadata.GetOrAddString("Odd"), new Version(1, 0, 0, 0), default, default, default(AssemblyFlags), AssemblyHashAlgorithm.None);
        metadata.AddAssemblyReference(metadata.GetOrAddString(reference), version, default, default, default(AssemblyFlags), default);
        metadata.AddTypeDefinition(TypeAttributes.NotPublic, default, metadata.GetOrAddString("<Module>"), default,
            MetadataTokens.FieldDefinitionHandle(1), MetadataTokens.MethodDefinitionHandle(1));
        var image = new BlobBuilder();
        new ManagedPEBuilder(PEHeaderBuilder.CreateLibraryHeader(), new MetadataRootBuilder(metadata), new BlobBuilder()).Serialize(image);
        return image.ToArray();
    }
}
