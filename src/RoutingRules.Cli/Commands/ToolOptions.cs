using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using RoutingRules.Cli.Output;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Commands;

/// <summary>Options that several commands share, made anew for each.</summary>
internal static class ToolOptions
{
    private static readonly Dictionary<string, bool> TextAndJson = new(StringComparer.Ordinal) { ["text"] = false, ["json"] = true };

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

    public static Option<string[]> Profiles() =>
        new("--profiles")
        {
            HelpName = "FOLDER",
            Description = "Take device profiles from the *.profile.json files of a folder; may be given several times, earlier folders win.",
            DefaultValueFactory = _ => [],
        };

    public static Option<string?> Config() =>
        new("--config")
        {
            HelpName = "FILE",
            Description =
                "Use a configuration: which rules run, how grave they are, what counts as failed (failOn, usually warning).\nWithout it, the "
                + "nearest routing-rules.json counts, looked for where the shows lie and in the folders above.",
        };

    public static Option<bool> NoConfig() => new("--no-config") { Description = "Use no configuration, even where there is a routing-rules.json." };

    public static Option<ReportFormat?> Format(string description) =>
        new("--format")
        {
            HelpName = "FORMAT",
            Description = $"{description}\n{string.Join(",\n", ReportFormats.All.Select(format => $"{format.Name}: {format.Title}"))}.",
            CustomParser = result =>
            {
                var format = ReportFormats.Find(result.Tokens[0].Value);
                if (format is null)
                {
                    result.AddError($"'{result.Tokens[0].Value}' is no format; there are {NameList.Of(ReportFormats.All.Select(known => known.Name))}.");
                }

                return format;
            },
        };

    public static Option<ReportTarget[]> Report() =>
        new("--report")
        {
            HelpName = "FORMAT=FILE",
            Description = "Write a report to a file as well, such as json=report.json; may be given several times.",
            CustomParser = ParseReports,
            DefaultValueFactory = _ => [],
        };

    public static Option<bool> Quiet() =>
        new("--quiet") { Description = "Say less: list only what counts as failed, leave clean documents out, and give no messages beside errors." };

    public static Option<string?> Waivers() =>
        new("--waivers") { HelpName = "FILE", Description = "Excuse what a list of waivers names: each with reason, owner, last day and scope." };

    public static Option<DateOnly?> AsOf() => Day("--as-of", "The day for which waivers count; usually today.");

    /// <summary>An option that takes a whole number.</summary>
    public static Option<long?> Number(string name, long lowest, long highest, string description) =>
        new(name)
        {
            HelpName = "N",
            Description = description,
            CustomParser = result =>
            {
                if (
                    long.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                    && number >= lowest
                    && number <= highest
                )
                {
                    return number;
                }

                result.AddError(
                    string.Create(CultureInfo.InvariantCulture, $"{name} takes a whole number from {lowest} to {highest}, not '{result.Tokens[0].Value}'.")
                );
                return null;
            },
        };

    /// <summary>An option that takes one of a few words.</summary>
    public static Option<string?> Word<T>(string name, IReadOnlyDictionary<string, T> words, string description) =>
        new(name)
        {
            HelpName = string.Join("|", words.Keys),
            Description = description,
            CustomParser = result => Checked(name, words, result).FirstOrDefault(),
        };

    /// <summary>The format of an account for people, or for programs.</summary>
    public static Option<string?> TextOrJson(string description) => Word("--format", TextAndJson, description);

    /// <summary>The words given to an option; others are reported.</summary>
    public static string[] Checked<T>(string name, IReadOnlyDictionary<string, T> words, ArgumentResult result)
    {
        foreach (var token in result.Tokens.Where(token => !words.ContainsKey(token.Value)))
        {
            result.AddError($"{name} takes {string.Join(" or ", words.Keys)}, not '{token.Value}'.");
        }

        return [.. result.Tokens.Select(token => token.Value)];
    }

    /// <summary>An option that takes a day.</summary>
    public static Option<DateOnly?> Day(string name, string description) =>
        new(name)
        {
            HelpName = "DATE",
            Description = description,
            CustomParser = result =>
            {
                if (DateOnly.TryParseExact(result.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
                {
                    return day;
                }

                result.AddError($"{name} takes a day as year-month-day, such as 2027-06-12, not '{result.Tokens[0].Value}'.");
                return null;
            },
        };

    private static ReportTarget[] ParseReports(ArgumentResult result)
    {
        var targets = new List<ReportTarget>();
        foreach (var token in result.Tokens)
        {
            var at = token.Value.IndexOf('=', StringComparison.Ordinal);
            if (at < 1 || at == token.Value.Length - 1 || ReportFormats.Find(token.Value[..at]) is not { } format)
            {
                result.AddError(
                    $"--report takes FORMAT=FILE, such as json=report.json, not '{token.Value}'; formats are "
                        + $"{NameList.Of(ReportFormats.All.Select(known => known.Name))}."
                );
                return [];
            }

            var path = token.Value[(at + 1)..];
            targets.Add(new ReportTarget(format, path));
        }

        return [.. targets];
    }
}
