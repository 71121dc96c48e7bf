using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Documents.Formats;
using RoutingRules.Engine.Configuration;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Reports.Schemas;

namespace RoutingRules.Cli.Commands;

/// <summary><c>schemas</c>: writes the published schemas.</summary>
internal static class SchemasCommand
{
    public static Command Create(CliConsole console)
    {
        var folder = new Argument<string>("FOLDER") { Description = "The folder to write them to." }.NamesNoOption();
        var command = new ToolCommand(
            "schemas",
            "Write the JSON schemas of every kind of document to a folder, for editors and other programs, and the catalogue of rules.",
            "routing-rules schemas schema/\nWrites *.schema.json files and rules.md there."
        )
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

            var rules = EngineSetup.Create([], LoadedConfig.Usual, console with { Plugins = [] }).Catalogue;
            var files = Enum.GetValues<SchemaKind>()
                .Select(kind => (Name: SchemaGenerator.FileName(kind), Text: SchemaGenerator.Generate(kind)))
                .Append((RuleCatalogue.OptionsSchemaName, RuleCatalogue.OptionsSchema(rules)))
                .Append((RuleCatalogue.PageName, RuleCatalogue.Markdown(rules)));
            foreach (var (name, text) in files)
            {
                using var target = OutputFile.Begin(Path.Join(path, name), []);
                target.Content.Write(Texts.Utf8.GetBytes(text));
                target.Commit();
                CliRunner.Say(console, $"wrote {Path.Join(path, name)}");
            }

            return ExitCode.Clean;
        });
        return command;
    }
}
