using System.Text.Json;
using NJsonSchema;
using NJsonSchema.Validation;
using RoutingRules.Documents.Formats;

namespace RoutingRules.Schema;

/// <summary>Checks documents against the published schemas with NJsonSchema.</summary>
/// <remarks>
/// For hosts that work with schemas; the readers of the engine are stricter, faster and say more. Thread safe.
/// Never throws for what a document holds.
/// </remarks>
public static class SchemaValidator
{
    private const int MaxDepth = 100;

    private static readonly Dictionary<SchemaKind, Lazy<JsonSchema>> Schemas = Enum.GetValues<SchemaKind>()
        .ToDictionary(kind => kind, kind => new Lazy<JsonSchema>(() => JsonSchema.FromJsonAsync(RoutingSchemas.Text(kind)).GetAwaiter().GetResult()));

    /// <summary>Every departure from the schema, ordered by pointer and message; empty when there is none.</summary>
    /// <param name="kind">The kind of document.</param>
    /// <param name="utf8Json">The document, without a byte order mark.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kind"/> is no kind.</exception>
    public static IReadOnlyList<SchemaProblem> Validate(SchemaKind kind, ReadOnlyMemory<byte> utf8Json)
    {
        if (!Schemas.TryGetValue(kind, out var schema))
        {
            throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of document.");
        }

        try
        {
            var text = StrictText.Of(utf8Json.Span, MaxDepth);
            using var document = JsonDocument.Parse(utf8Json, new JsonDocumentOptions { MaxDepth = MaxDepth });
            var errors = schema.Value.Validate(text);
            return
            [
                .. errors
                    .SelectMany(Leaves)
                    .Select(error => new SchemaProblem { Pointer = SchemaPath.ToPointer(error.Path, document.RootElement), Message = Explain(error) })
                    .OrderBy(problem => problem.Pointer, StringComparer.Ordinal)
                    .ThenBy(problem => problem.Message, StringComparer.Ordinal),
            ];
        }
        catch (Exception fault) when (fault is JsonException or Newtonsoft.Json.JsonException or OverflowException)
        {
            return [new SchemaProblem { Pointer = "", Message = $"The text cannot be read as JSON: {fault.Message}" }];
        }
    }

    /// <summary>
    /// What is wrong inside a list entry, in place of the word that the entry is wrong; alternatives stay one error, since none of them was meant for sure.
    /// </summary>
    private static IEnumerable<ValidationError> Leaves(ValidationError error) =>
        error is ChildSchemaValidationError { Kind: ValidationErrorKind.ArrayItemNotValid } list
            ? list.Errors.SelectMany(entry => entry.Value).SelectMany(Leaves)
            : [error];

    private static string Explain(ValidationError error) =>
        error.Kind switch
        {
            ValidationErrorKind.PropertyRequired => "This member is missing.",
            ValidationErrorKind.NoAdditionalPropertiesAllowed => "The format has no such member here.",
            ValidationErrorKind.PatternMismatch => "The text is not in the form that the schema's pattern gives.",
            ValidationErrorKind.NotInEnumeration => "The value is not one of those that the schema lists.",
            ValidationErrorKind.NotOneOf => "Not exactly one of the alternatives is met.",
            ValidationErrorKind.NotAnyOf => "None of the alternatives is met.",
            ValidationErrorKind.NumberTooSmall => "The number is too small.",
            ValidationErrorKind.NumberTooBig => "The number is too large.",
            ValidationErrorKind.TooFewItems => "The list has too few entries.",
            ValidationErrorKind.TooManyItems => "The list has too many entries.",
            ValidationErrorKind.ItemsNotUnique => "An entry stands in the list twice.",
            ValidationErrorKind.StringTooLong => "The text is too long.",
            ValidationErrorKind.StringExpected => "A text belongs here.",
            ValidationErrorKind.IntegerExpected => "A whole number belongs here.",
            ValidationErrorKind.NumberExpected => "A number belongs here.",
            ValidationErrorKind.BooleanExpected => "True or false belongs here.",
            ValidationErrorKind.ObjectExpected => "An object belongs here.",
            ValidationErrorKind.ArrayExpected => "A list belongs here.",
            _ => $"The schema is not met ({error.Kind}).",
        };
}
