namespace RoutingRules.Cli;

/// <summary>The tool was called wrongly, or something it needs cannot be read or written; the message names the place and the remedy.</summary>
internal sealed class UsageException(string message) : Exception(message)
{
    /// <summary>What an argument was refused for, without the name of the parameter, which says nothing at a terminal.</summary>
    public static string Reason(ArgumentException fault)
    {
        var named = new ArgumentException("", fault.ParamName).Message;
        return named.Length == 0 ? fault.Message : fault.Message.Split(named, 2)[0];
    }
}
