using Logbook.Contracts;

namespace Logbook.PluginHost;

/// <summary>An answer is taken over only when it is one: known outputs, real numbers, a role that exists.</summary>
internal static class OutcomeVetting
{
    public static Outcome Vet(CalculationInfo info, Outcome? outcome) => outcome switch
    {
        Values values => Vet(info, values),
        Refused refused when info.Inputs.Any(i => i.Role == refused.Role) && !string.IsNullOrWhiteSpace(refused.Sentence) => refused,
        Refused => new Failed("it refused without naming one of its roles and a reason"),
        _ => new Failed("it gave neither values nor a refusal"),
    };

    private static Outcome Vet(CalculationInfo info, Values values)
    {
        if (values.Numbers is not { Count: > 0 } || values.Notes is null || values.Steps is null)
        {
            return new Failed("it gave no result");
        }

        foreach (var (id, number) in values.Numbers)
        {
            if (!info.Outputs.Any(o => o.Id == id))
            {
                return new Failed($"it gave '{FolderVetting.Visible(id)}', which is none of its outputs");
            }

            if (!double.IsFinite(number))
            {
                return new Failed($"{id} came out as no number");
            }
        }

        return values;
    }
}
