using System.Reflection;
using Logbook.Contracts;
using McMaster.NETCore.Plugins;

namespace Logbook.PluginHost;

/// <summary>Loads a vetted assembly into a room of its own, with the contracts alone in common, and makes its calculations.</summary>
internal static class PluginLoading
{
    public static PluginReport Load(string assembly, string name, string version)
    {
        var (calculations, crash) = PluginCode.Call(() => Instantiate(assembly, name));
        var trouble = crash is null ? InfoVetting.Trouble(calculations!) : PluginTrouble.Failed("load", crash);
        return trouble is null
            ? new PluginReport(name, version, "loaded", "", "", [.. calculations!.OrderBy(c => c.Info.Id, StringComparer.Ordinal)])
            : PluginReport.Of(trouble, name, version);
    }

    private static List<LoadedCode> Instantiate(string assembly, string name)
    {
        // Lazy: the contracts' own references are the framework's, and walking them costs more than all plug-ins together.
        var loader = PluginLoader.CreateFromAssemblyFile(assembly, [typeof(ICalculation)], config => config.IsLazyLoaded = true);
        var types = loader.LoadDefaultAssembly().GetExportedTypes().Where(t => t.IsAssignableTo(typeof(ICalculation)) && !t.IsAbstract);
        return [.. types.Select(type => Make(type, name))];
    }

    private static LoadedCode Make(Type type, string name)
    {
        var constructor = type.GetConstructor(Type.EmptyTypes)
            ?? throw new MissingMethodException($"{type.Name} has no public constructor without parameters");
        var code = (ICalculation)constructor.Invoke(BindingFlags.DoNotWrapExceptions, binder: null, parameters: null, culture: null);
        return new LoadedCode(code, code.Info ?? throw new InvalidOperationException($"{type.Name} has no Info"), name);
    }
}

/// <summary>A plug-in's calculation with what it said about itself at loading, so that asking for it runs no foreign code.</summary>
internal sealed class LoadedCode(ICalculation code, CalculationInfo info, string plugIn) : ICalculation
{
    public CalculationInfo Info => info;

    public string PlugIn => plugIn;

    public Outcome Run(Inputs inputs) => code.Run(inputs);
}
