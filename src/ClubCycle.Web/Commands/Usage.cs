namespace ClubCycle.Web.Commands;

/// <summary>What the program says about itself on the command line.</summary>
internal static class Usage
{
    private const string Text = """
        ClubCycle plans a hockey club's yearly physical preparation.

          serve [--demo | --empty] [--migrate]   Starts the web app. With no connection string it runs a private
                                                 PostgreSQL. --demo fills a fresh database with an invented club.
          plan REQUEST.json [--out FOLDER]       Plans one squad without a server or a database. "-" reads the
                                                 request from standard input. Prints the plan, or writes
                                                 plan.json and plan.ics into FOLDER.
          migrate                                Brings the database of the connection string up to date.
          reset-password EMAIL                   Prints a link that signs this person in once, for a head coach
            [--drop-second-factor]               whom nobody else can give one.
          backup [FOLDER] [--keep N] [--every H] Makes a backup in FOLDER, while the app runs or not, and keeps the
                                                 newest N. --every makes one each H hours until it is stopped.
          restore BACKUP [--replace | --verify]  Puts a backup in the place of the database and checks it. --replace
                                                 lets it take the place of a club. --verify only tries it, in a
                                                 private PostgreSQL that is thrown away.
          health [ADDRESS]                       Asks a running app whether it is ready to work.

        """;

    public static int Print(TextWriter output)
    {
        output.Write(Text);
        return ExitCode.Done;
    }

    public static int Unknown(string word, TextWriter errors)
    {
        errors.WriteLine($"\"{word}\" is not a command. Use one of these:");
        errors.WriteLine();
        errors.Write(Text);
        return ExitCode.Problems;
    }
}
