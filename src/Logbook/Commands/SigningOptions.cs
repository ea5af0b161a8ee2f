using System.CommandLine;
using Logbook.Handover;

namespace Logbook.Commands;

/// <summary>The options of a command that is signed.</summary>
internal sealed record SigningOptions(Option<string?> PinFile, Option<string?> Witness)
{
    public static SigningOptions New() => new(
        Options.Text("--pin-file", "Read the PIN from a file instead of asking for it; '-' is standard input.", "FILE"),
        Options.Text("--witness", "The signer has forgotten the PIN: this person's PIN is asked, the identity is to be confirmed.", "CODE"));

    public void AddTo(Command command)
    {
        command.Add(PinFile);
        command.Add(Witness);
    }

    public SignWith Of(Shell shell, ParseResult parse)
    {
        var secret = new SecretLine(shell, parse.GetValue(PinFile));
        return new SignWith(Pins(shell, parse), code => secret.Ask($"PIN of {code}"), parse.GetValue(Witness))
        {
            // To somebody who is asked, and on the error stream as the question is; with a PIN from a file an error stays one line.
            Tell = secret.Asks ? means => shell.Error.WriteLine($"you sign: \"{means}\"") : null,
        };
    }

    public static Pins Pins(Shell shell, ParseResult parse) => new(new PinFile(OpenSite.Folder(shell, parse)), shell.PinRounds);
}
