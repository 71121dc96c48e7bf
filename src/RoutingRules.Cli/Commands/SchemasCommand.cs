using System.CommandLine;
using RoutingRules.Cli.Output;
using RoutingRules.Reading;

namespace RoutingRules.Cli.Commands;

/// <summary><c>schemas</c>: writes the published schemas.</summary>
internal static class SchemasCommand
{
    public static Command Create(CliConsole console)
    {
        var folder = new Argument<string>("FOLDER") { Description = "The folder to write them to." }.NamesNoOption();
        var command = new ToolCommand(
            "schemas",
            "Write the JSON schemas of shows, device profiles, configurations and reports to a folder, for editors and other programs.",
            "routing-rules schemas schema/\nWrites four *.schema.json files there.")
        {
            folder,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(folder);
            if (!Directory.Exists(path))
            {
                throw new UsageException($"there is no folder '{path}'; make it first.");
            }

            foreach (var kind in Enum.GetValues<SchemaKind>())
            {
                using var target = OutputFile.Begin(Path.Join(path, SchemaGenerator.FileName(kind)), []);
                target.Content.Write(Texts.Utf8.GetBytes(SchemaGenerator.Generate(kind)));
                target.Commit();
                CliRunner.Say(console, $"wrote {Path.Join(path, SchemaGenerator.FileName(kind))}");
            }

            return ExitCode.Clean;
        });
        return command;
    }
}
