// refused: 
namespace Programs.Refused.Network;

/// <summary>Reading from the network.</summary>
public static class P
{
    public static string Refused => new HttpClient().GetStringAsync("http://localhost/").Result;
}
