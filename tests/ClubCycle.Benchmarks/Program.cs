System.Console.WriteLine("later");
