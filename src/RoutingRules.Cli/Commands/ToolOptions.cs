using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using RoutingRules.Cli.Output;

namespace RoutingRules.Cli.Commands;

/// <summary>Options that several commands share, made anew for each.</summary>
internal static class ToolOptions
{
    /// <summary>Refuses values that look like options: a misspelt option would otherwise count as a file.</summary>
    public static T NamesNoOption<T>(this T argument)
        where T : Argument
    {
        argument.Validators.Add(result =>
        {
            foreach (var token in result.Tokens)
            {
                if (token.Value.Length > 1 && token.Value[0] == '-')
                {
                    result.AddError($"there is no option '{token.Value}'; to name a file that begins with a dash, write ./{token.Value}");
                }
            }
        });
        return argument;
    }

    public static Option<string[]> Profiles() => new("--profiles")
    {
        HelpName = "FOLDER",
        Description = "Take device profiles from the *.profile.json files of a folder; may be given several times, earlier folders win.",
        DefaultValueFactory = _ => [],
    };

    public static Option<string?> Config() => new("--config")
    {
        HelpName = "FILE",
        Description = "Use a configuration: which rules run, how grave they are, what counts as failed (failOn, usually warning).",
    };

    public static Option<ReportFormat?> Format(string description) => new("--format")
    {
        HelpName = "text|json",
        Description = description,
        CustomParser = result =>
        {
            var format = ParseFormat(result.Tokens[0].Value);
            if (format is null)
            {
                result.AddError($"'{result.Tokens[0].Value}' is no format; write --format text or --format json.");
            }

            return format;
        },
    };

    public static Option<ReportTarget[]> Report() => new("--report")
    {
        HelpName = "FORMAT=FILE",
        Description = "Write a report to a file as well, such as json=report.json; may be given several times.",
        CustomParser = ParseReports,
        DefaultValueFactory = _ => [],
    };

    public static Option<bool> Quiet() => new("--quiet")
    {
        Description = "Say less: list only what counts as failed, leave clean documents out, and give no messages beside errors.",
    };

    /// <summary>An option that takes a whole number.</summary>
    public static Option<long?> Number(string name, long lowest, long highest, string description) => new(name)
    {
        HelpName = "N",
        Description = description,
        CustomParser = result =>
        {
            if (long.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= lowest && number <= highest)
            {
                return number;
            }

            result.AddError(string.Create(
                CultureInfo.InvariantCulture, $"{name} takes a whole number from {lowest} to {highest}, not '{result.Tokens[0].Value}'."));
            return null;
        },
    };

    private static ReportFormat? ParseFormat(string word) => word switch
    {
        "text" => ReportFormat.Text,
        "json" => ReportFormat.Json,
        _ => null,
    };

    private static ReportTarget[] ParseReports(ArgumentResult result)
    {
        var targets = new List<ReportTarget>();
        foreach (var token in result.Tokens)
        {
            var at = token.Value.IndexOf('=', StringComparison.Ordinal);
            if (at < 1 || at == token.Value.Length - 1 || ParseFormat(token.Value[..at]) is not { } format)
            {
                result.AddError($"--report takes FORMAT=FILE with the format text or json, such as json=report.json, not '{token.Value}'.");
                return [];
            }

            var path = token.Value[(at + 1)..];
            targets.Add(new ReportTarget(format, path));
        }

        return [.. targets];
    }
}
