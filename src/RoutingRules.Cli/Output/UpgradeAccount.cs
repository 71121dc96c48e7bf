using System.Globalization;
using System.Text.Json;
using RoutingRules.Documents.Upgrading;

namespace RoutingRules.Cli.Output;

/// <summary>Tells what upgrading documents came to.</summary>
internal static class UpgradeAccount
{
    /// <summary>The account of one document in a line.</summary>
    public static string Heading(string name, UpgradeResult result) =>
        result.Steps.IsEmpty
            ? string.Create(CultureInfo.InvariantCulture, $"{name}: in format version {DocumentUpgrade.Version} already, and left as it is.")
            : string.Create(CultureInfo.InvariantCulture, $"{name}: brought from format version {result.Steps[0].From} to {result.Steps[^1].To}.");

    public static void Write(Stream output, IEnumerable<(string Name, UpgradeResult Result)> documents, bool isJson)
    {
        if (isJson)
        {
            WriteJson(output, documents);
            return;
        }

        using var text = Texts.Over(output);
        foreach (var (name, result) in documents)
        {
            text.Write($"{SafeText.Show(Heading(name, result))}\n");
            foreach (var step in result.Steps)
            {
                foreach (var change in step.Changes)
                {
                    text.Write($"  {SafeText.Show(change)}\n");
                }
            }
        }
    }

    private static void WriteJson(Stream output, IEnumerable<(string Name, UpgradeResult Result)> documents)
    {
        using (var json = new Utf8JsonWriter(output, Texts.Json))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteStartArray("documents");
            foreach (var (name, result) in documents)
            {
                json.WriteStartObject();
                json.WriteString("path", name);
                json.WriteStartArray("steps");
                foreach (var step in result.Steps)
                {
                    json.WriteStartObject();
                    json.WriteNumber("from", step.From);
                    json.WriteNumber("to", step.To);
                    json.WriteStartArray("changes");
                    foreach (var change in step.Changes)
                    {
                        json.WriteStringValue(change);
                    }

                    json.WriteEndArray();
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }
}
