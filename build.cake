// dotnet tool restore && dotnet cake --target=Test
var target = Argument("target", "Default");
var configuration = Argument("configuration", "Release");
var artifacts = Directory("artifacts");

Task("Build")
    .Does(() => DotNetBuild("Logbook.sln", new DotNetBuildSettings { Configuration = configuration }));

Task("Test")
    .Does(() => DotNetTest("Logbook.sln", new DotNetTestSettings { Configuration = configuration }));

// The times that README quotes; a table, never a test.
Task("Bench")
    .Does(() => DotNetRun("tests/Benchmarks/Benchmarks.csproj", new ProcessArgumentBuilder(), new DotNetRunSettings { Configuration = "Release" }));

// Power cuts and kills by the thousand; ends non-zero when an acknowledged record was lost. Numbers may follow: --soak="SEED CUTS KILLS KILLS".
Task("Soak")
    .Does(() => DotNetRun("tests/Soak/Soak.csproj", new ProcessArgumentBuilder().Append(Argument("soak", "")), new DotNetRunSettings { Configuration = "Release" }));

// Compiled ahead for this machine, since a screen that opens slowly is not opened.
Task("Publish")
    .Does(() => DotNetPublish("src/Logbook/Logbook.csproj", new DotNetPublishSettings
    {
        Configuration = "Release",
        OutputDirectory = artifacts + Directory("logbook"),
        Runtime = Argument("runtime", System.Runtime.InteropServices.RuntimeInformation.RuntimeIdentifier),
        SelfContained = false,
        PublishReadyToRun = true,
    }));

Task("Demo")
    .Does(() => DotNetRun("src/Logbook/Logbook.csproj", new ProcessArgumentBuilder().Append("demo"), new DotNetRunSettings { Configuration = configuration }));

Task("Default")
    .IsDependentOn("Build")
    .IsDependentOn("Test");

RunTarget(target);
